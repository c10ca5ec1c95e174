// Package sheet prints answers: here on a terminal and as JSON. It computes nothing:
// every number comes from package answer, rounded for people (loads up to 5 lb or
// 2 kg, light to 0.1 stop) on the terminal and not at all in the JSON.
//
// Rules of talking: the result first, then what decides it, worst first; a result is
// a word and a shape, never a color alone; loads never stand without the cautions;
// what is not known is said as plainly as what is.
package sheet
