package kit

// Nearest returns the id that a typing error would turn into id: the one of ids with
// the fewest letters to change, at most a third of them; "" where none is that near.
// The first of several is taken.
func Nearest(id string, ids []string) string {
	best, fewest := "", max(1, len(id)/3)+1
	if len(id) > 80 {
		return ""
	}
	for _, other := range ids {
		if n := changes(id, other, fewest); n < fewest {
			best, fewest = other, n
		}
	}
	return best
}

// changes counts the letters to add, drop or replace to turn a into b (Levenshtein's
// distance), or returns enough where their lengths alone ask for that many.
func changes(a, b string, enough int) int {
	if len(a)-len(b) >= enough || len(b)-len(a) >= enough {
		return enough
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			next := min(diagonal+cost, row[j]+1, row[j+1]+1)
			diagonal, row[j+1] = row[j+1], next
		}
	}
	return row[len(b)]
}
