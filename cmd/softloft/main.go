// Command softloft plans a large soft light overhead: one plan file goes in; what
// light it gives, what carries it and what must come off the shelf come out.
//
// Exit status: 0 nothing over, 1 something over, 2 the plan or the command line
// cannot be read.
package main

import "os"

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
