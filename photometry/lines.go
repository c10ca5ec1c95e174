package photometry

import "bytes"

// lines reads values that have a line each.
type lines struct {
	*scanner
	f *LampFile
}

// text reads a line of text, which may be empty.
func (r *lines) text(string) string {
	raw, _, _ := r.next()
	text, _ := words(raw[:min(len(raw), 256)])
	return text
}

// maybe reads a number that may be left out.
func (r *lines) maybe(what string) (*float64, error) {
	raw, line, ok := r.next()
	if !ok {
		return nil, r.errorAt(line, "the file ends where %s is due; it is cut off", what)
	}
	r.last = line
	raw = bytes.TrimSpace(raw)
	if len(raw) == 0 {
		return nil, nil
	}
	value, err := r.value(raw, line, what)
	if err != nil {
		return nil, err
	}
	return known(value), nil
}

// whole reads a whole number that is needed.
func (r *lines) whole(what string) (int, error) {
	line := r.line
	value, err := r.maybe(what)
	if err != nil {
		return 0, err
	}
	if value == nil {
		return 0, r.errorAt(line, "an empty line where %s is due; one value stands in each line", what)
	}
	return r.asWhole(*value, line, what)
}

// close notes what is odd once all is read.
func (r *lines) close() {
	if r.tight > 0 {
		r.f.odd("commas are decimal signs; a point is due")
	}
	if r.degrees > 0 {
		r.f.odd("degree signs stand behind numbers")
	}
	if text, line, any := r.rest(); any {
		r.f.odd("line %d: something stands behind the last intensity and is not read: %q", line, text)
	}
}
