package kit

import (
	"reflect"
	"slices"
	"strings"
)

// Kinds lists the kinds of entries in the order in which a kit has them.
func Kinds() []string {
	var kinds []string
	for field := range reflect.TypeFor[Kit]().Fields() {
		kinds = append(kinds, keyOf(field))
	}
	return kinds
}

// keyOf returns the key of a field, without options; "" for none.
func keyOf(field reflect.StructField) string {
	key, _, _ := strings.Cut(field.Tag.Get("key"), ",")
	return key
}

// item is one entry of any kind.
type item struct {
	Kind, ID string
	Entry    Entry
	Value    any // Alloy, Tube, …
}

// items lists the entries of a kind by id, or, with kind "", of all kinds in
// their order.
func (k Kit) items(kind string) []item {
	var list []item
	for _, name := range Kinds() {
		if kind != "" && kind != name {
			continue
		}
		set := k.set(name)
		for _, id := range sortedKeys(set) {
			list = append(list, itemOf(name, id, set))
		}
	}
	return list
}

// item finds one entry.
func (k Kit) item(kind, id string) (item, bool) {
	set := k.set(kind)
	if !set.IsValid() || !set.MapIndex(reflect.ValueOf(id)).IsValid() {
		return item{}, false
	}
	return itemOf(kind, id, set), true
}

// set returns the set of a kind, not valid where there is no such kind.
func (k Kit) set(kind string) reflect.Value {
	kit := reflect.ValueOf(k)
	for field := range kit.Type().Fields() {
		if keyOf(field) == kind {
			return kit.FieldByIndex(field.Index)
		}
	}
	return reflect.Value{}
}

func itemOf(kind, id string, set reflect.Value) item {
	value := set.MapIndex(reflect.ValueOf(id)).Interface()
	return item{Kind: kind, ID: id, Entry: value.(interface{ entry() Entry }).entry(), Value: value}
}

func sortedKeys(set reflect.Value) []string {
	ids := make([]string, 0, set.Len())
	for _, key := range set.MapKeys() {
		ids = append(ids, key.String())
	}
	slices.Sort(ids)
	return ids
}
