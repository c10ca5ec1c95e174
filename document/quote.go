package document

import (
	"strconv"
	"strings"

	"go.yaml.in/yaml/v4"
)

// Quote returns text as a YAML scalar on one line, in double quotation marks where it needs them
// and valid anywhere in a document. What is not UTF-8 becomes the replacement sign.
func Quote(text string) string {
	text = strings.ToValidUTF8(text, "\ufffd")
	if isPlain(text) {
		return text
	}
	return strconv.Quote(text)
}

// isPlain tells whether a text reads as itself without quotation marks, after a key and within
// brackets.
func isPlain(text string) bool {
	if text == "" || len(text) > 1000 || strings.ContainsAny(text, "\r\n\t") || strings.TrimSpace(text) != text {
		return false
	}
	for _, frame := range []string{"k: " + text, "[" + text + "]", "{k: " + text + "}", "- " + text} {
		nodes, err := loadAll(frame)
		if err != nil || len(nodes) != 1 || len(nodes[0].Content) != 1 {
			return false
		}
		content := nodes[0].Content[0].Content
		if len(content) == 0 {
			return false
		}
		last := content[len(content)-1]
		if len(content) > 2 || last.Kind != yaml.ScalarNode || last.Value != text || last.Style != 0 || last.Anchor != "" || isNull(last) {
			return false
		}
	}
	return true
}
