// Package finding turns one check into data: a formula that is evaluated and
// printed as the same object, its inputs with their origins, a limit with its
// source, and a result.
//
// A result is one of: within the stated limit, tight, over, not known. What
// cannot be computed (a missing rating, a NaN, a division by zero, a value
// outside a formula's stated range) is not known; it is never 0 and never a
// pass.
//
// Units are SI; the program's texts are rounded for reading, the JSON carries
// 13 significant digits.
package finding
