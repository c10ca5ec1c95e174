package document

import (
	"reflect"
	"slices"
	"strings"
)

// unknownKey tells a key that no field has, with what was perhaps meant.
func (r *reader) unknownKey(at, entry spot, names []string) {
	problem := "unknown key"
	if name := label(at.path); name != "" {
		problem += " in " + name
	}
	key := entry.key.Value
	hint := ""
	near := nearest(key, names)
	homes := slices.DeleteFunc(slices.Clone(r.homesOf(key)), func(home string) bool { return home == pattern(at.path) })
	switch {
	case len(near) > 0:
		hint = "write " + orList(near)
	case len(homes) > 0:
		hint = "it belongs " + orList(homes)
	case strings.Contains(key, ":"):
		hint = "put a blank after the colon"
	case len(names) == 0:
		hint = "leave it out"
	default:
		hint = "known here: " + listed(names)
	}
	if len(near) > 0 && len(homes) > 0 {
		hint += "; " + key + " belongs " + orList(homes)
	}
	r.tell(entry.key, entry.path, problem, hint)
}

// homesOf returns where a key is known in the document's struct, as messages say it.
func (r *reader) homesOf(key string) []string {
	if r.homes == nil {
		r.homes = map[string][]string{}
		r.gatherHomes(r.top, "", nil)
	}
	if homes := r.homes[key]; len(homes) <= 3 {
		return homes
	}
	return nil
}

// gatherHomes notes the keys of t, which stands at path, and of all below. Types inside themselves
// are left out, and those with forms of their own.
func (r *reader) gatherHomes(t reflect.Type, path string, above []reflect.Type) {
	for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice || t.Kind() == reflect.Array {
		t = t.Elem()
	}
	if t.Kind() != reflect.Struct || slices.Contains(above, t) || len(above) > 8 || path != "" && reflect.PointerTo(t).Implements(reflect.TypeFor[Reader]()) {
		return
	}
	for _, f := range r.shape(t) {
		r.homes[f.name] = append(r.homes[f.name], pattern(path))
		r.gatherHomes(f.of, Key(path, f.name), append(above, t))
	}
}

// pattern says where the mapping at path stands, whatever the item.
func pattern(path string) string {
	all, _ := steps(path)
	var names []string
	for _, s := range all {
		if s.index < 0 {
			names = append(names, s.key)
		}
	}
	if len(names) == 0 {
		return "at the top"
	}
	return "in " + strings.Join(names, ".")
}

// nearest returns the words that are least different from text, where they are near enough to be
// meant; in their own order.
func nearest(text string, words []string) []string {
	given := folded(text)
	best, near := max(1, len([]rune(given))/3), []string(nil)
	for _, word := range words {
		switch distance := differences(given, folded(word), best); {
		case distance < best:
			best, near = distance, []string{word}
		case distance == best && distance < min(len([]rune(word)), len([]rune(given))):
			near = append(near, word)
		}
	}
	return near
}

// folded returns a word without the differences that are easily mistyped: capitals, hyphens, blanks.
func folded(word string) string {
	return strings.NewReplacer("-", "", "_", "", " ", "").Replace(strings.ToLower(word[:min(len(word), 64)]))
}

// differences counts the letters to add, drop, change or swap with their neighbor to turn a into b:
// optimal string alignment. It returns more than most where there are more than most.
func differences(a, b string, most int) int {
	from, into := []rune(a), []rune(b)
	if gap := len(from) - len(into); gap > most || -gap > most {
		return most + 1
	}
	before, last := make([]int, len(into)+1), make([]int, len(into)+1)
	for j := range last {
		last[j] = j
	}
	for i, x := range from {
		row := make([]int, len(into)+1)
		row[0] = i + 1
		for j, y := range into {
			change := 1
			if x == y {
				change = 0
			}
			row[j+1] = min(last[j]+change, last[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && x == into[j-1] && from[i-1] == y {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last = last, row
	}
	return last[len(into)]
}

// orList joins words for a sentence: a, b or c.
func orList(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// listed joins words, at most 20 of them.
func listed(words []string) string {
	if len(words) > 20 {
		return strings.Join(words[:20], ", ") + ", ..."
	}
	return strings.Join(words, ", ")
}
