package build

import "slices"

// Task is one node of a project network. Needs are indices of tasks that end before
// it starts.
type Task struct {
	Seconds float64
	People  int
	Needs   []int
}

// Times are what the critical path method says of each task, in s from the start:
// with as many people as are wanted. Slack is how long a task may be late. Order is
// a topological order, the task with the longest work behind it first.
type Times struct {
	Early, Late, Slack []float64
	Tail               []float64 // from a task's start to the end of all, at least
	Order              []int
	Length             float64
}

// CriticalPath works out the times of a network: Early by a pass forward, Late by a
// pass backward. Where tasks need each other in a circle there are no times; the
// circle is returned, each task needing the one after it.
func CriticalPath(tasks []Task) (times Times, circle []int) {
	order, circle := topological(tasks)
	if circle != nil {
		return Times{}, circle
	}
	n := len(tasks)
	t := Times{Early: make([]float64, n), Late: make([]float64, n), Slack: make([]float64, n), Tail: make([]float64, n)}
	for _, i := range order {
		for _, need := range tasks[i].Needs {
			t.Early[i] = max(t.Early[i], t.Early[need]+tasks[need].Seconds)
		}
		t.Length = max(t.Length, t.Early[i]+tasks[i].Seconds)
	}
	behind := make([]float64, n)
	for k := n - 1; k >= 0; k-- {
		i := order[k]
		t.Tail[i] = tasks[i].Seconds + behind[i]
		for _, need := range tasks[i].Needs {
			behind[need] = max(behind[need], t.Tail[i])
		}
	}
	for i := range tasks {
		t.Late[i] = t.Length - t.Tail[i]
		t.Slack[i] = max(0, t.Late[i]-t.Early[i])
	}
	t.Order = byTail(tasks, t.Tail)
	return t, nil
}

// topological sorts tasks so that each comes after what it needs, or finds a circle.
func topological(tasks []Task) (order, circle []int) {
	waits := make([]int, len(tasks))
	followers := make([][]int, len(tasks))
	for i, task := range tasks {
		waits[i] = len(task.Needs)
		for _, need := range task.Needs {
			followers[need] = append(followers[need], i)
		}
	}
	for i := range tasks {
		if waits[i] == 0 {
			order = append(order, i)
		}
	}
	for k := 0; k < len(order); k++ {
		for _, next := range followers[order[k]] {
			if waits[next]--; waits[next] == 0 {
				order = append(order, next)
			}
		}
	}
	if len(order) == len(tasks) {
		return order, nil
	}
	return nil, circleIn(tasks, waits)
}

// circleIn walks from a task that never became free to one that it waits for, until
// one comes again.
func circleIn(tasks []Task, waits []int) []int {
	at := slices.IndexFunc(waits, func(w int) bool { return w > 0 })
	var path []int
	for !slices.Contains(path, at) {
		path = append(path, at)
		for _, need := range tasks[at].Needs {
			if waits[need] > 0 {
				at = need
				break
			}
		}
	}
	return path[slices.Index(path, at):]
}

// byTail orders tasks so that each comes after what it needs and, of those that could
// come next, the one with the longest tail; the first in the list where tails are equal.
func byTail(tasks []Task, tail []float64) []int {
	waits := make([]int, len(tasks))
	followers := make([][]int, len(tasks))
	var free []int
	for i, task := range tasks {
		waits[i] = len(task.Needs)
		for _, need := range task.Needs {
			followers[need] = append(followers[need], i)
		}
		if waits[i] == 0 {
			free = append(free, i)
		}
	}
	order := make([]int, 0, len(tasks))
	for len(free) > 0 {
		best := 0
		for k, i := range free {
			if b := free[best]; tail[i] > tail[b] || tail[i] == tail[b] && i < b {
				best = k
			}
		}
		i := free[best]
		free = slices.Delete(free, best, best+1)
		order = append(order, i)
		for _, next := range followers[i] {
			if waits[next]--; waits[next] == 0 {
				free = append(free, next)
			}
		}
	}
	return order
}
