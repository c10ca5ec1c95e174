package photometry

import (
	"fmt"
	"math"
	"strconv"
)

// scanner walks over a text by lines or by numbers, and knows the line. Nothing of
// the text is copied.
type scanner struct {
	name string
	data []byte
	at   int
	line int // of what is read next; the first is 1
	last int // of the last number

	// decimalComma takes a comma for a decimal point, else it parts numbers.
	decimalComma bool
	// tight counts commas between two digits, which could be either.
	tight int
	// degrees counts degree signs behind numbers.
	degrees int
}

// errorAt says what is wrong in a line.
func (s *scanner) errorAt(line int, format string, values ...any) error {
	return fmt.Errorf("%s, line %d: %s", s.name, line, fmt.Sprintf(format, values...))
}

// next returns the next line without its break, its number, and whether there was one.
func (s *scanner) next() (text []byte, line int, ok bool) {
	if s.at >= len(s.data) {
		return nil, s.line, false
	}
	start, line := s.at, s.line
	for s.at < len(s.data) && s.data[s.at] != '\n' && s.data[s.at] != '\r' {
		s.at++
	}
	text = s.data[start:s.at]
	s.breakLine()
	return text, line, true
}

// breakLine steps over one line break: LF, CR, CR LF, or CR CR LF, which is a CR LF
// that was translated once more.
func (s *scanner) breakLine() {
	if s.at >= len(s.data) {
		return
	}
	rest := s.data[s.at:]
	switch {
	case len(rest) > 2 && rest[0] == '\r' && rest[1] == '\r' && rest[2] == '\n':
		s.at += 3
	case len(rest) > 1 && rest[0] == '\r' && rest[1] == '\n':
		s.at += 2
	default:
		s.at++
	}
	s.line++
}

// skip steps over what parts numbers and reports whether something follows.
func (s *scanner) skip() bool {
	for s.at < len(s.data) {
		switch b := s.data[s.at]; {
		case b == '\n' || b == '\r':
			s.breakLine()
		case b == ' ' || b == '\t' || b == '\f' || b == '\v' || (b == ',' && !s.decimalComma):
			s.at++
		default:
			return true
		}
	}
	return false
}

// room is how many numbers the rest of the text can hold at most.
func (s *scanner) room() int { return (len(s.data) - s.at + 1) / 2 }

// number reads the next number; what says what is due there.
func (s *scanner) number(what string) (float64, error) {
	if !s.skip() {
		return 0, s.errorAt(max(s.last, 1), "the file ends where %s is due; it is cut off", what)
	}
	start := s.at
	s.last = s.line
	for s.at < len(s.data) && !s.parts(s.data[s.at]) {
		s.at++
	}
	if s.at+1 < len(s.data) && s.data[s.at] == ',' && s.at > start && digit(s.data[s.at-1]) && digit(s.data[s.at+1]) {
		s.tight++
	}
	return s.value(s.data[start:s.at], s.line, what)
}

func (s *scanner) parts(b byte) bool {
	return b == ' ' || b == '\t' || b == '\n' || b == '\r' || b == '\f' || b == '\v' || (b == ',' && !s.decimalComma)
}

func digit(b byte) bool { return b >= '0' && b <= '9' }

// value reads one number; a degree sign behind it is counted and left out.
func (s *scanner) value(token []byte, line int, what string) (float64, error) {
	token = s.undegree(token)
	var plain [40]byte
	if len(token) == 0 || len(token) > len(plain) {
		return 0, s.errorAt(line, "%q where %s is due; a number such as 12.5 is due", shorten(token), what)
	}
	commas := 0
	for i, b := range token {
		switch {
		case b == ',' && s.decimalComma:
			b = '.'
			commas++
		case b == 'd' || b == 'D': // the exponent as some older programs write it
			b = 'e'
		case !digit(b) && b != '.' && b != '+' && b != '-' && b != 'e' && b != 'E':
			return 0, s.errorAt(line, "%q where %s is due; a number such as 12.5 is due", shorten(token), what)
		}
		plain[i] = b
	}
	if s.decimalComma {
		s.tight += commas
	}
	value, err := strconv.ParseFloat(string(plain[:len(token)]), 64)
	if err != nil || math.IsInf(value, 0) || math.IsNaN(value) {
		return 0, s.errorAt(line, "%q where %s is due; a number such as 12.5 is due", shorten(token), what)
	}
	return value, nil
}

func (s *scanner) undegree(token []byte) []byte {
	n := len(token)
	if n > 1 && token[n-1] == 0xB0 { // ISO 8859-1, or the end of UTF-8
		s.degrees++
		token = token[:n-1]
		if n > 2 && token[n-2] == 0xC2 {
			token = token[:n-2]
		}
	}
	return token
}

// whole reads a whole number, which may be written with a decimal point.
func (s *scanner) whole(what string) (int, error) {
	line := s.line
	value, err := s.number(what)
	if err != nil {
		return 0, err
	}
	return s.asWhole(value, max(line, s.line), what)
}

func (s *scanner) asWhole(value float64, line int, what string) (int, error) {
	if value != math.Trunc(value) || math.Abs(value) > 1e12 {
		return 0, s.errorAt(line, "%g where %s is due; a whole number is due", value, what)
	}
	return int(value), nil
}

// numbers reads n numbers; the caller made sure of the room for them. Each says what
// one of them is.
func (s *scanner) numbers(n int, each string) ([]float64, error) {
	if n < 0 || n > s.room() {
		return nil, s.errorAt(s.line, "%d values of %s are due, and the rest of the file has room for %d at most; it is cut off or its header is wrong", n, each, s.room())
	}
	all := make([]float64, n)
	for i := range all {
		value, err := s.number(each)
		if err != nil {
			return nil, s.counted(err, i, n)
		}
		all[i] = value
	}
	return all, nil
}

// rest tells what stands behind the last number, and in which line.
func (s *scanner) rest() (text string, line int, any bool) {
	if !s.skip() {
		return "", s.line, false
	}
	line = s.line
	raw, _, _ := s.next()
	return shorten(raw), line, true
}

// counted adds to an error which of n values it is about.
func (s *scanner) counted(err error, index, n int) error {
	return fmt.Errorf("%w (value %d of %d)", err, index+1, n)
}
