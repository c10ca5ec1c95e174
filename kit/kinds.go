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
	kit := reflect.ValueOf(k)
	for field := range kit.Type().Fields() {
		name := keyOf(field)
		if kind != "" && kind != name {
			continue
		}
		set := kit.FieldByIndex(field.Index)
		for _, id := range sortedKeys(set) {
			value := set.MapIndex(reflect.ValueOf(id)).Interface()
			list = append(list, item{Kind: name, ID: id, Entry: value.(interface{ entry() Entry }).entry(), Value: value})
		}
	}
	return list
}

// item finds one entry.
func (k Kit) item(kind, id string) (item, bool) {
	for _, it := range k.items(kind) {
		if it.ID == id {
			return it, true
		}
	}
	return item{}, false
}

func sortedKeys(set reflect.Value) []string {
	ids := make([]string, 0, set.Len())
	for _, key := range set.MapKeys() {
		ids = append(ids, key.String())
	}
	slices.Sort(ids)
	return ids
}
