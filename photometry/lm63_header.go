package photometry

import (
	"bytes"
	"strconv"
	"strings"
	"unicode/utf8"
)

// header63 reads the lines up to TILT=.
type header63 struct {
	f       *LampFile
	s       *scanner
	year    int // 0 where the file has no header, as those of 1986
	version string
	include bool // tilt factors stand in the file

	keyword  string // of the last line, for what [MORE] continues; empty where it isn't kept
	keywords bool   // there were some
	named    map[string]string
	free     string // first line of free text, as in files of 1986
	latin    bool
}

// properLines are the version lines as the standards write them.
var properLines = map[string]int{
	"IESNA91": 1991, "IESNA:LM-63-1995": 1995, "IESNA:LM-63-2002": 2002, "IES:LM-63-2019": 2019,
}

// kept are the keywords whose text is used or whose presence is looked at.
var kept = []string{"LUMINAIRE", "LUMCAT", "TEST", "TESTLAB", "ISSUEDATE", "MANUFAC", "NEARFIELD"}

func (h *header63) read() error {
	h.named = map[string]string{}
	h.first()
	inside := 0
	for {
		line, number, ok := h.s.next()
		if !ok {
			return h.s.errorAt(max(1, h.s.line-1), "no line begins with TILT=%s; the line TILT=NONE is due before the numbers", insideNote(inside))
		}
		if value, ok := tiltLine(line); ok {
			h.notes()
			return h.tilt(value, number)
		}
		if inside == 0 && bytes.Contains(bytes.ToUpper(line[:min(len(line), 4096)]), []byte("TILT=")) {
			inside = number
			h.f.odd("line %d: TILT= stands within a line of text, where it means nothing", number)
		}
		h.label(line)
	}
}

func insideNote(line int) string {
	if line == 0 {
		return ""
	}
	return ", only line " + strconv.Itoa(line) + " has it within its text"
}

// first reads the version, if there is a line for it.
func (h *header63) first() {
	start := *h.s
	line, _, _ := h.s.next()
	year, named := versionLine(line)
	text, _ := words(line[:min(len(line), 80)])
	switch {
	case !named:
		*h.s = start
		h.version = "1986"
		return
	case year == 0:
		h.f.odd("the version line is %q, which none of LM-63's is: read as 2002", text)
		year = 2002
	case properLines[text] != year:
		h.f.odd("the version line is %q, not as the standard writes it: read as %d", text, year)
	}
	h.year, h.version = year, strconv.Itoa(year)
}

// label keeps one line of text. Only what is used is copied, and no more of it than a
// name has.
func (h *header63) label(line []byte) {
	h.latin = h.latin || !utf8.Valid(line)
	raw, value, ok := keywordLine(line[:min(len(line), 256)])
	if !ok {
		if h.free == "" {
			h.free, _ = words(line[:min(len(line), 256)])
		}
		return
	}
	if h.year == 0 && !h.keywords {
		h.f.odd("no version line, but keywords: the opening is read as in files of 1991")
	}
	h.keywords = true
	if bytes.EqualFold(raw, []byte("MORE")) {
		h.more(value)
		return
	}
	h.keyword = ""
	for _, keyword := range kept {
		if bytes.EqualFold(raw, []byte(keyword)) {
			h.keyword = keyword
		}
	}
	if _, twice := h.named[h.keyword]; h.keyword != "" && !twice {
		h.named[h.keyword], _ = words(value)
	}
}

// more continues the last keyword's text.
func (h *header63) more(value []byte) {
	if text, ok := h.named[h.keyword]; ok && len(text) < 256 {
		further, _ := words(value)
		h.named[h.keyword] = strings.TrimSpace(text + " " + further)
	}
}

// keywordLine parts "[KEYWORD] text".
func keywordLine(line []byte) (keyword, value []byte, ok bool) {
	rest, ok := bytes.CutPrefix(bytes.TrimSpace(line), []byte("["))
	if !ok {
		return nil, nil, false
	}
	keyword, value, ok = bytes.Cut(rest, []byte("]"))
	return bytes.TrimSpace(keyword), value, ok
}

// title is what the file calls the lamp.
func (h *header63) title() string {
	for _, keyword := range []string{"LUMINAIRE", "LUMCAT"} {
		if h.named[keyword] != "" {
			return h.named[keyword]
		}
	}
	return h.free
}

// required are the keywords that a version asks for.
var required = map[int][]string{
	1991: {"TEST", "MANUFAC"},
	2002: {"TEST", "TESTLAB", "ISSUEDATE", "MANUFAC"},
	2019: {"TEST", "TESTLAB", "ISSUEDATE", "MANUFAC"},
}

// notes tells what is odd in the labels.
func (h *header63) notes() {
	var missing []string
	for _, keyword := range required[h.year] {
		if _, ok := h.named[keyword]; !ok {
			missing = append(missing, "["+keyword+"]")
		}
	}
	if len(missing) > 0 {
		h.f.odd("keywords that this version asks for are missing: %s", strings.Join(missing, " "))
	}
	if h.latin {
		h.f.odd("text is not UTF-8: read as ISO 8859-1")
	}
	if h.named["NEARFIELD"] != "" {
		h.f.odd("measured in the near field (%s): the far field may differ", h.named["NEARFIELD"])
	}
}

// tilt reads the value of TILT=. Numbers may follow in the same line where a line
// break is lost.
func (h *header63) tilt(value []byte, line int) error {
	h.s.last = line
	word, rest := firstWord(value)
	switch strings.ToUpper(string(word)) {
	case "NONE":
	case "INCLUDE":
		h.include = true
	case "":
		h.f.odd("line %d: nothing stands behind TILT=: read as TILT=NONE", line)
	default:
		h.f.odd("line %d: tilt factors stand in another file (%s) that is not read: the output of a tilted lamp is not known", line, shorten(value))
		return nil
	}
	if len(rest) > 0 {
		h.f.odd("line %d: numbers follow TILT= in the same line; a line break is lost", line)
		h.back(rest, line)
	}
	return nil
}

func firstWord(value []byte) (word, rest []byte) {
	value = bytes.TrimSpace(value)
	if at := bytes.IndexAny(value, " \t"); at >= 0 {
		return value[:at], bytes.TrimSpace(value[at:])
	}
	return value, nil
}

// back sets the scanner on the rest of the line that it just left.
func (h *header63) back(rest []byte, line int) {
	s := h.s
	at := bytes.LastIndex(s.data[:s.at], rest)
	s.at, s.line = at, line
}
