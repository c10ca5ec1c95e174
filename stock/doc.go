// Package stock is the shop's stock as data, and what of a job's needs comes off its
// shelves: what is there, what a longer piece stands in for, what is rented, what is
// short, and how tubes and ropes are cut.
//
// A stock file is a YAML document of rows; each row is one kind of thing of one length
// on one shelf, the shop's own or another house's (from). The order in which needs are
// served: own stock before rented before short; among rented rows the cheaper first.
//
// What is not here: two short tubes and a splice. A splice bends and slips otherwise
// than a tube does, so it is another frame, and its loads would have to be worked out again.
//
// Terms: own, rented and short are counts of pieces; a bar is one tube or rope of the
// stock before it is cut.
package stock
