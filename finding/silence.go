package finding

// Silence finds root causes. It returns a copy of the findings in which the
// Causes of each are the ids of the roots that explain it, and empty for a root
// itself; a cause that is not among the findings, or that is better than what
// it should explain, explains nothing and is taken out. Nothing is dropped.
//
// A finding is explained only by one whose result is as bad or worse: not known
// never hides over. So the worst result of what stays visible is the worst of
// all. Findings that only explain each other in a circle stay visible.
func Silence(findings []Finding) []Finding {
	byID := map[string]int{}
	for i, f := range findings {
		if j, twice := byID[f.ID]; !twice || f.Result.severity() > findings[j].Result.severity() {
			byID[f.ID] = i
		}
	}
	silenced := make([]Finding, len(findings))
	for i, f := range findings {
		var roots []string
		if f.needsExplaining() {
			s := search{findings, byID, map[int]bool{i: true}, nil}
			s.from(i)
			roots = s.roots
		}
		f.Causes = roots
		silenced[i] = f
	}
	return silenced
}

// Silenced tells whether a root explains the finding; after Silence only.
func (f Finding) Silenced() bool { return len(f.Causes) > 0 }

// Roots are the findings that nothing else explains; after Silence only.
func Roots(findings []Finding) []Finding {
	var roots []Finding
	for _, f := range findings {
		if !f.Silenced() {
			roots = append(roots, f)
		}
	}
	return roots
}

func (f Finding) needsExplaining() bool {
	return f.Result.severity() >= NotKnown.severity()
}

// search walks causes upward and gathers the roots, each finding once.
type search struct {
	findings []Finding
	byID     map[string]int
	seen     map[int]bool
	roots    []string
}

func (s *search) from(i int) {
	for _, id := range s.findings[i].Causes {
		j, present := s.byID[id]
		if !present || s.seen[j] || s.findings[j].Result.severity() < s.findings[i].Result.severity() {
			continue
		}
		s.seen[j] = true
		if s.explained(j) {
			s.from(j)
		} else {
			s.roots = append(s.roots, id)
		}
	}
}

// explained tells whether a finding has a cause that counts.
func (s *search) explained(i int) bool {
	for _, id := range s.findings[i].Causes {
		if j, present := s.byID[id]; present && j != i && s.findings[j].Result.severity() >= s.findings[i].Result.severity() {
			return true
		}
	}
	return false
}
