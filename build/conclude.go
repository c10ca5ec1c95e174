package build

import (
	"fmt"

	"softloft/finding"
	"softloft/plan"
	"softloft/source"
)

// conclude holds the crew, the lifts by hand and the names to what they must be. A plan
// without a crew asks for none of it.
func (w *work) conclude() {
	if w.crew == nil {
		return
	}
	w.concludeCrew()
	w.concludeLifts()
	w.concludeNames()
}

func (w *work) add(f finding.Finding) { w.findings = append(w.findings, f) }

func (w *work) subject(part, key string) finding.Subject {
	line, column := w.rig.Place(key)
	return finding.Subject{Part: part, Place: finding.Place{Line: line, Column: column}}
}

func input(symbol, name string, value float64, unit, origin string) finding.Input {
	return finding.Input{Symbol: symbol, Name: name, Value: value, Unit: unit, Origin: origin}
}

// concludeCircle tells that parts wait for each other.
func (w *work) concludeCircle(circle []int) {
	var names []string
	for _, i := range circle {
		parts := make([]string, 0, len(w.steps[i].parts))
		for _, p := range w.steps[i].parts {
			parts = append(parts, p.ID)
		}
		name := w.name(i)
		if len(parts) > 0 {
			name += " (" + list(parts, 4) + ")"
		}
		names = append(names, name)
	}
	names = append(names, w.name(circle[0]))
	text := names[0]
	for _, name := range names[1:] {
		text += ", which waits for " + name
	}
	w.add(finding.Unknown("build.order", w.subject("box", "box"), "An order in which it can be built", "parts wait for each other: "+text))
	w.answer.Job.Unknown = append(w.answer.Job.Unknown, "an order of the work: "+text)
}

// concludeCrew holds the crew to the step that needs most.
func (w *work) concludeCrew() {
	subject := w.subject("crew", "crew.people")
	if steps := w.unknownPeople(); len(steps) > 0 {
		f := finding.Unknown("build.people", subject, "People that the work takes", steps[0].peopleWhy+": "+list(titles(steps), 3))
		f.Causes = w.massless()
		w.add(f)
	}
	var most *step
	for _, s := range w.steps {
		if finding.Known(s.people) && (most == nil || s.people > most.people) {
			most = s
		}
	}
	if most == nil {
		return
	}
	origin := most.peopleWhy
	if origin == "" {
		origin = "one pair of hands does it"
	}
	w.add(finding.Check{
		ID: "build.crew", Subject: subject, Statement: "People for the step that needs most: " + most.title, Relation: finding.AtMost,
		Value:       finding.Given(input("n", "people that it takes", most.people, "", origin)),
		Limit:       finding.Given(input("n_crew", "people of the crew", float64(w.crew.People), "", w.rig.Origin("crew.people"))),
		Source:      source.Cite("plan", "crew.people"),
		Assumptions: []string{"tight: nobody is left to step in"},
	}.Conclude())
}

func titles(steps []*step) []string {
	var all []string
	for _, s := range steps {
		all = append(all, s.title)
	}
	return all
}

// massless are the load's findings on parts without a mass: they explain why hands are
// not known.
func (w *work) massless() []string {
	var ids []string
	for i := range w.rig.Parts {
		if p := &w.rig.Parts[i]; p.Mass == nil {
			ids = append(ids, "load.mass."+p.ID)
		}
	}
	return ids
}

// concludeLifts tells the piece that comes nearest to what so many may lift, and each
// for which no figure is published.
func (w *work) concludeLifts() {
	var worst *piece
	for _, s := range w.steps {
		switch {
		case s.heavy == nil:
		case s.heavy.beyond:
			w.add(finding.Unknown("build.piece."+s.heavy.part.ID, w.subject(s.heavy.part.ID, s.heavy.part.Path), "Lifting "+s.heavy.part.Name+" by hand",
				fmt.Sprintf("it takes %d people, and shares of a team are published for %d at most: break it down or lift it by a machine", s.heavy.people, mostTeam)))
		case worst == nil || harder(s.heavy, worst):
			worst = s.heavy
		}
	}
	if worst != nil {
		w.concludePiece(worst)
	}
}

func (w *work) concludePiece(at *piece) {
	p := at.part
	team, _ := source.TeamShare(at.people)
	told := []string{"on a cart at 0.75 m before, nothing twisted, once in five minutes or less", "the equation is for one person; a team's share is guidance on top of it"}
	if at.high {
		told = append(told, "it ends above 1.75 m, where the equation ends: two, from ladders or a lift, which the equation does not cover")
	}
	if p.Demo {
		told = append(told, "DEMO: its mass is an invented demo value")
	}
	w.add(finding.Check{
		ID: "build.piece", Subject: w.subject(p.ID, p.Path), Statement: fmt.Sprintf("Heaviest lift by hand: %s, %s", p.Name, counted(at.people, "person")),
		Relation: finding.AtMost, Unit: "kg",
		Value: finding.Given(input("m", "mass of "+p.Name, *p.Mass, "kg", p.MassFrom)),
		Limit: finding.Work{Formula: "m_allow = n*s*R", Name: "what so many may lift",
			Steps: []finding.Step{
				{Formula: "H_M = H_0/max(H, H_0)", Result: finding.Input{Name: "multiplier, hands away from the body"}},
				{Formula: "V_M = 1 - k_V*abs(V - V_0)", Result: finding.Input{Name: "multiplier, height of the hands"}},
				{Formula: "D_M = 0.82 + k_D/max(D, D_0)", Result: finding.Input{Name: "multiplier, way up"}},
				{Formula: "R = L_C*H_M*V_M*D_M", Result: finding.Input{Name: "recommended weight limit of one person", Unit: "kg"}},
			},
			Inputs: []finding.Input{
				finding.Cited("L_C", source.LoadConstant()), finding.Cited("s", team), input("n", "people", float64(at.people), "", "the fewest that are within"),
				input("H", "hands from between the ankles", at.lift.Hands, "m", "20 cm and half of the piece's depth, 25 cm at least"),
				input("V", "height at which it is set down", at.lift.From, "m", "horses at 1 m and the piece's place in the box"),
				input("D", "way up", at.lift.Way, "m", "from a cart at 0.75 m"),
				constant("H_0", "nearest", metric.Near, "m"), constant("V_0", "height of the knuckles", metric.Knuckle, "m"),
				constant("k_V", "loss with height", metric.PerHeight, "1/m"), constant("D_0", "shortest way", metric.Shortest, "m"), constant("k_D", "gain of a short way", metric.Travel, "m"),
			}},
		Source: source.LoadConstant().Citation, Assumptions: told,
	}.Conclude())
}

func constant(symbol, name string, value float64, unit string) finding.Input {
	return input(symbol, name, value, unit, "lifting equation, metric set (from memory)")
}

// concludeNames asks for every name where the plan names anybody. A plan that names
// nobody has blank lines on its sheet instead.
func (w *work) concludeNames() {
	if w.crew.Names == (plan.Names{}) {
		return
	}
	asked := map[string]bool{}
	for _, s := range w.answer.Job.Signs {
		if s.Name != nil || asked[s.Role] {
			continue
		}
		asked[s.Role] = true
		w.add(finding.Unknown("build.hold."+s.Role, w.subject("crew", "crew.names"), "Who signs: "+s.What, "the plan names nobody under crew.names."+s.Role))
	}
}
