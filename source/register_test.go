package source

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
)

func TestRegister(t *testing.T) {
	form := regexp.MustCompile(`^[a-z0-9]+([.-][a-z0-9]+)*$`)
	kinds := []Kind{Standard, Regulation, Handbook, Guideline, CommonPractice, User, Demo, Derived}
	all := All()
	for i, p := range all {
		if i > 0 && all[i-1].ID >= p.ID {
			t.Errorf("%s follows %s: not sorted, or twice", p.ID, all[i-1].ID)
		}
		if !form.MatchString(string(p.ID)) || p.Title == "" || !slices.Contains(kinds, p.Kind) {
			t.Errorf("%+v lacks an id of small letters, a title or a kind", p)
		}
		if !p.Read && p.Note == "" {
			t.Errorf("%s was not read, and no note says how it is known", p.ID)
		}
		if p.Read && p.Note == memory {
			t.Errorf("%s is read and from memory", p.ID)
		}
		if found, ok := Lookup(p.ID); !ok || found != p {
			t.Errorf("%s is looked up as %+v, %v", p.ID, found, ok)
		}
	}
	if _, ok := Lookup("hearsay"); ok {
		t.Error("hearsay is in the register")
	}
}

func TestRegisterCannotBeChanged(t *testing.T) {
	All()[0].Title = "changed"
	Factors()[0].Value = 1
	Knots()[0].Share = 1
	Canopies()[0].Max = 9
	Reflectances()[0].Value = 9
	if All()[0].Title == "changed" || Factors()[0].Value == 1 || Knots()[0].Share == 1 || Canopies()[0].Max == 9 || Reflectances()[0].Value == 9 {
		t.Error("a caller changed the register")
	}
}

// Every row of every table cites a publication that is registered.
func TestRowsAreCited(t *testing.T) {
	cited := map[string]Citation{}
	for _, f := range Factors() {
		cited[string(f.Source)+" "+string(f.Kind)] = f.Citation
	}
	for _, l := range Limits() {
		cited[l.Name] = l.Citation
		if l.Name == "" || !(l.Value > 0) || math.IsInf(l.Value, 0) {
			t.Errorf("%+v has no name or no value", l)
		}
	}
	for _, e := range slices.Concat(Knots(), WireEnds(), []Efficiency{UnnamedKnot()}) {
		cited[e.Name] = e.Citation
		if !(e.Share > 0 && e.Share <= 1) {
			t.Errorf("%+v is no share", e)
		}
	}
	for _, b := range bends {
		cited[b.Name] = b.Citation
	}
	for _, r := range Reflectances() {
		cited[r.Name] = r.Citation
	}
	for _, c := range Canopies() {
		cited["canopy"] = c.Citation
	}
	for name, c := range cited {
		if p, ok := Lookup(c.Source); !ok {
			t.Errorf("%s cites %q, which is not in the register", name, c.Source)
		} else if c.FromMemory && p.Kind == User {
			t.Errorf("%s is from memory and stated by the user", name)
		}
	}
}

func TestCitationsAreHonest(t *testing.T) {
	for _, c := range []struct {
		citation Citation
		read     bool
		text     string
	}{
		{Cite("dguv-215-313", "1.4"), true, "DGUV Information 215-313, loads over people, 1.4"},
		{Cite("asme-b30.9", ""), false, "ASME B30.9, Slings (from memory)"},
		{remembered("asme-b30.26", "26-1.2"), false, "ASME B30.26, Rigging Hardware, 2010, 26-1.2 (this value is from memory)"},
		{Cite("asme-b30.26", ""), true, "ASME B30.26, Rigging Hardware, 2010"},
		{Citation{Source: "niosh-1991", Page: "20"}, true, "Applications Manual for the Revised NIOSH Lifting Equation (equation of 1991), p. 20"},
		{Cite("common-practice", ""), false, "common practice"},
		{Cite("plan", "rules.push"), true, "the plan, rules.push"},
		{Cite("hearsay", ""), false, "hearsay (not in the register)"},
		{Citation{}, false, "no source named"},
	} {
		if c.citation.Read() != c.read || c.citation.String() != c.text {
			t.Errorf("%+v is read %v, %q; want %v, %q", c.citation, c.citation.Read(), c.citation.String(), c.read, c.text)
		}
	}
}

// No text of the register promises more than a result may.
func TestNoPromise(t *testing.T) {
	for _, p := range All() {
		for _, word := range []string{"approved", " OK", "is safe"} {
			if strings.Contains(p.Note, word) {
				t.Errorf("%s: %q", p.ID, p.Note)
			}
		}
	}
}
