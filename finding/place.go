package finding

// On is a subject: a part, and the line and column of the plan that ask for it,
// zeros where there is none.
func On(part string, line, column int) Subject {
	return Subject{Part: part, Place: Place{Line: line, Column: column}}
}
