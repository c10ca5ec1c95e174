package document

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// What a document may hold. A plan is far below all of them; beyond them stands noise, which is refused
// before it costs time.
const (
	MaxBytes = 4 << 20 // size of a document
	MaxDepth = 64      // mappings and lists inside each other
	MaxSigns = 100_000 // commas, colons, opening brackets, quotation marks and the like: bounds the number of values
)

const byteOrderMark = "\ufeff"

// refuseBytes returns the mistake of a document that need not be parsed: too large, no text, a
// directive.
func (d *Document) refuseBytes() *Mistake {
	if len(d.data) > MaxBytes {
		return d.at(0, 0, "", fmt.Sprintf("%.1f MB long, %d MB at most are read", float64(len(d.data))/(1<<20), MaxBytes>>20), "give a plan, or a part of it")
	}
	for _, mark := range []string{"\xff\xfe", "\xfe\xff"} {
		if strings.HasPrefix(d.text, mark) {
			return d.at(1, 1, "", "the text is in UTF-16", "save it as UTF-8")
		}
	}
	if mistake := d.refuseSigns(); mistake != nil {
		return mistake
	}
	return d.refuseDirectives()
}

// refuseSigns goes through the text once.
func (d *Document) refuseSigns() *Mistake {
	signs := 0
	for at, r := range d.text {
		problem, hint := "", ""
		switch {
		case r == utf8.RuneError:
			problem, hint = notUTF8(d.text[at:])
		case r == 0:
			problem, hint = "a NUL byte stands here, the document is no text", "save it as UTF-8"
		case r < ' ' && r != '\t' && r != '\n' && r != '\r' || 0x7f <= r && r <= 0x9f || r == 0xfffe || r == 0xffff:
			problem, hint = fmt.Sprintf("an invisible control sign (U+%04X) stands here", r), "delete it"
		case r == 0x2028 || r == 0x2029:
			problem, hint = "an invisible line separator stands here", "delete it"
		case r == 0xfeff:
			problem, hint = "an invisible byte order mark stands here", "delete it"
		case isStructure(d.text, at, r):
			if signs++; signs > MaxSigns {
				problem, hint = fmt.Sprintf("more than %d commas, colons, brackets and marks stand in this document", MaxSigns), "give a plan, or a part of it"
			}
		}
		if problem != "" {
			line, column := d.position(at)
			return d.at(line, column, "", problem, hint)
		}
	}
	return nil
}

// notUTF8 says what is wrong with text, which begins with the replacement sign or with a byte that is not UTF-8.
func notUTF8(text string) (problem, hint string) {
	if _, size := utf8.DecodeRuneInString(text); size > 1 {
		return "", "" // the replacement sign itself, typed
	}
	return "this byte is not UTF-8", "save the document as UTF-8"
}

// isStructure tells whether the sign may begin a value or a token, so that there are at most two
// values for each such sign.
func isStructure(text string, at int, r rune) bool {
	switch r {
	case ',', ':', '[', '{', '"', '\'', '&', '*', '!':
		return true
	case '-', '?':
		return at+1 == len(text) || strings.IndexByte(" \t\r\n", text[at+1]) >= 0
	}
	return false
}

// refuseDirectives returns the mistake of a directive before the document. The one that says YAML
// 1.2 changes nothing.
func (d *Document) refuseDirectives() *Mistake {
	for line := 1; line <= len(d.line); line++ {
		text := strings.TrimRight(d.text[d.line[line-1]:d.lineEnd(line)], " \t\r\n")
		switch {
		case text == "" || strings.HasPrefix(strings.TrimLeft(text, " \t"), "#") || isVersion(text):
			continue
		case strings.HasPrefix(text, "%YAML"):
			return d.at(line, 1, "", clip(text)+" is another version of YAML", "write %YAML 1.2, or leave the line out")
		case strings.HasPrefix(text, "%"):
			return d.at(line, 1, "", "a line that begins with % directs the YAML reader, which is not taken here", "leave it out")
		}
		return nil
	}
	return nil
}

// isVersion tells whether a line without its end is the directive of YAML 1.2.
func isVersion(line string) bool {
	fields := strings.Fields(line)
	return len(fields) >= 2 && fields[0] == "%YAML" && fields[1] == "1.2" && (len(fields) == 2 || strings.HasPrefix(fields[2], "#"))
}
