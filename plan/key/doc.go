// Package key reads the tags with which Go types describe the plan file, and walks values of such
// types: it fills in defaults and lists them, and lists the keys that no analysis uses yet.
//
// A field's tags are
//
//	key:"name" or key:"name,required"  its key in the file
//	key:",inline"                      its keys stand among the outer struct's own
//	default:"text"                     what is taken where the key is absent, as one would type it
//	source:"text"                      where that default comes from
//	when:"other"                       the default counts only where the key other stands beside it
//	unused:"issue"                     no analysis uses the key yet
//	doc:"text"                         what the key means, in a crew's words
//
// Types whose value may take several forms read themselves (document.Reader); where such a value
// stands as a mapping, the tags of its struct count.
package key
