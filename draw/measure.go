package draw

import "strings"

// TextWidth returns how wide a text is, in mm, set in a size in mm. Signs that the type
// lacks count as wide as its widest Latin ones, far-eastern ones as a full square.
func TextWidth(text string, size float64, bold bool) float64 {
	widths, others := regularWidths[:], regularWidthsOther
	if bold {
		widths, others = boldWidths[:], boldWidthsOther
	}
	var sum int
	for _, r := range text {
		sum += signWidth(r, widths, others)
	}
	return float64(sum) / 1000 * size
}

func signWidth(r rune, widths []uint16, others map[rune]uint16) int {
	if i := int(r) - ' '; i >= 0 && i < len(widths) && widths[i] > 0 {
		return int(widths[i])
	}
	if w, ok := others[r]; ok && w > 0 {
		return int(w)
	}
	if r >= 0x1100 {
		return 1000
	}
	return 900
}

// Shorten cuts a text that is wider than width mm and ends it with three dots.
func Shorten(text string, size, width float64, bold bool) string {
	text = Clean(text)
	if TextWidth(text, size, bold) <= width {
		return text
	}
	runes := []rune(text)
	for len(runes) > 0 {
		runes = runes[:len(runes)-1]
		cut := strings.TrimRight(string(runes), " ,;:") + "…"
		if TextWidth(cut, size, bold) <= width {
			return cut
		}
	}
	return ""
}

// Wrap breaks a text at blanks into lines of at most width mm; a longer word is cut.
func Wrap(text string, size, width float64, bold bool) []string {
	var lines []string
	current := ""
	for _, word := range strings.Fields(Clean(text)) {
		joined := strings.TrimSpace(current + " " + word)
		if current != "" && TextWidth(joined, size, bold) > width {
			lines = append(lines, current)
			joined = word
		}
		current = Shorten(joined, size, width, bold)
	}
	if current != "" {
		lines = append(lines, current)
	}
	return lines
}
