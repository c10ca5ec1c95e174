package document

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// seen notes what a cursor offers on a value of each form.
type seen struct {
	Forms []string
}

func (s *seen) ReadFrom(c *Cursor) { s.look(c) }

func (s *seen) look(c *Cursor) {
	line := c.Place().String() + " " + c.Path() + " "
	switch {
	case c.IsText():
		line += "text " + c.Text()
	case c.IsList():
		line += "list"
	case c.IsMap():
		line += "mapping"
	default:
		line += "nothing"
	}
	if !c.IsText() && c.Text() != "" {
		line += " with a text"
	}
	s.Forms = append(s.Forms, line)
	for _, item := range c.Items() {
		s.look(item)
	}
	for _, key := range c.Keys() {
		below, ok := c.Key(key)
		if !ok {
			s.Forms = append(s.Forms, key+" has no value")
			continue
		}
		s.look(below)
	}
}

func TestCursorSeesEveryForm(t *testing.T) {
	var got struct {
		Any seen `key:"any"`
	}
	_, mistakes := Read("plan.yaml", []byte("any:\n  z: \"1 ft\"\n  a.b: [x, ~, {y: on}]\n"), &got)
	if mistakes.Err() != nil {
		t.Fatal(mistakes)
	}
	want := []string{
		"plan.yaml:2:3 any mapping",
		"plan.yaml:2:6 any.z text 1 ft",
		`plan.yaml:3:8 any["a.b"] list`,
		`plan.yaml:3:9 any["a.b"][0] text x`,
		`plan.yaml:3:12 any["a.b"][1] nothing`,
		`plan.yaml:3:15 any["a.b"][2] mapping`,
		`plan.yaml:3:19 any["a.b"][2].y text on`,
	}
	if diff := cmp.Diff(want, got.Any.Forms); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// Into tells of its own reading alone, though an earlier one failed.
type tried struct {
	Count int
	First bool
	Then  bool
	Fault bool
}

func (x *tried) ReadFrom(c *Cursor) {
	var count int
	var text string
	x.First = c.Into(&count)
	x.Then = c.Into(&text)
	x.Fault = c.Into(count)
}

func TestIntoTellsOfItself(t *testing.T) {
	var got struct {
		Any tried `key:"any"`
	}
	_, mistakes := Read("plan.yaml", []byte("any: word\n"), &got)
	want := "plan.yaml:1:6: any: \"word\" is not a whole number; write digits alone, such as 4\nplan.yaml:1:6: any: a value cannot be read into int; this is a fault of the program"
	if mistakes.Error() != want || got.Any.First || !got.Any.Then || got.Any.Fault {
		t.Errorf("%+v\n%v", got.Any, mistakes)
	}
}
