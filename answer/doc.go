// Package answer runs every analysis on one rig and gathers what they find. One
// plan goes in; every answer comes out, as the data that the terminal, the JSON and
// every sheet print: none of them computes anything again.
package answer
