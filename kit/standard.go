package kit

import (
	"embed"
	"io/fs"

	"softloft/document"
)

//go:embed data/*.yaml
var data embed.FS

// Standard returns the kit that comes with the program. Its mistakes would be this
// package's own; a test holds that there are none.
func Standard() (Kit, document.Mistakes) {
	folder, err := fs.Sub(data, "data")
	if err != nil {
		return Kit{}, document.Mistakes{whole("data", err)}
	}
	return ReadFolder(folder, Kit{})
}
