package cut

// Solve cuts a job at the least cost it can find, and says whether that is proved to be
// the least. Missing bars come before everything else: a plan with fewer of them wins. The
// error names what is wrong with the job; a piece that no length holds is no error, see
// Result.TooLong. Of two plans of one cost, which is returned is fixed, but not by rest.
func Solve(job Job) (Result, error) {
	if err := job.fault(); err != nil {
		return Result{}, err
	}
	p, tooLong := newProblem(job)
	if len(p.sizes) == 0 {
		return Result{TooLong: tooLong, Proved: true}, nil
	}
	w := &work{p: p, nodes: job.Nodes}
	if w.nodes == 0 {
		w.nodes = usualNodes
	}
	w.run()
	return w.result(job, tooLong), nil
}

// work is a job being solved. Bound is a cost that no plan is below.
type work struct {
	p     *problem
	plan  []pattern
	bound int64
	nodes int
	seen  int
}

func (w *work) run() {
	p := w.p
	w.plan = p.first()
	w.bound = p.bound(p.demand, p.lefts())
	if w.met() {
		return
	}
	if c := newColumns(p); c != nil {
		c.solve()
		w.bound = max(w.bound, p.upward(ceiling(c.bound*(1-1e-9))))
		if w.met() {
			return
		}
		w.complete(c)
	}
	if w.met() {
		return
	}
	s := newSearch(p, p.demand, p.lefts(), p.cost(w.plan), w.nodes)
	s.floor = w.bound
	s.run(0)
	w.seen += s.nodes
	if s.best != nil {
		w.plan = s.best
	}
	if s.complete() {
		w.bound = p.cost(w.plan)
	}
}

func (w *work) met() bool { return w.p.cost(w.plan) <= w.bound }

// complete cuts the patterns of the linear program in whole numbers and searches
// for the few pieces that remain.
func (w *work) complete(c *columns) {
	plan, remaining, left := c.rounded()
	spent := w.p.cost(plan)
	s := newSearch(w.p, remaining, left, w.p.cost(w.plan)-spent, w.nodes/4)
	s.floor = w.bound - spent
	s.run(0)
	w.seen += s.nodes
	if s.best != nil {
		w.plan = append(plan, s.best...)
	}
}

// result names the job's own pieces in each bar.
func (w *work) result(job Job, tooLong []int) Result {
	p := w.p
	r := Result{TooLong: tooLong, Proved: w.met(), Nodes: w.seen}
	next := make([]int, len(p.sizes))
	for _, pattern := range w.plan {
		k := p.kinds[pattern.kind]
		bar := Bar{Stock: k.stock, Length: float64(k.cap-whole(job.Kerf)) / fromLengths}
		for i, n := range pattern.counts {
			bar.Pieces = append(bar.Pieces, p.pieces[i][next[i]:next[i]+n]...)
			next[i] += n
		}
		bar.Rest = float64(max(k.cap-p.used(pattern.counts)-whole(job.Kerf), 0)) / fromLengths
		r.Bars = append(r.Bars, bar)
		if k.stock == Missing {
			r.Missing++
		} else {
			r.Cost += k.cost
		}
	}
	r.Bound = w.bound
	if p.lack > 0 {
		r.MissingBound, r.Bound = int(w.bound/p.lack), w.bound%p.lack
	}
	if r.MissingBound < r.Missing {
		r.Bound = 0
	}
	return r
}
