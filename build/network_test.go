package build

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Project networks of the kind that textbooks print. PERT text of operations research,
// "reliable construction" network of fourteen activities, 44 weeks, critical path
// A-B-C-E-F-J-L-N (from memory: Hillier and Lieberman, Introduction to Operations
// Research, project management). The second, eight activities of a plant's filter
// (Heizer and Render, Operations Management, 15 weeks, A-C-E-G-H; from memory).
var networks = []struct {
	name     string
	names    string
	seconds  []float64
	needs    []string // letters
	length   float64
	critical string
	slack    map[byte]float64
}{
	{"reliable construction", "ABCDEFGHIJKLMN", []float64{2, 4, 10, 6, 4, 5, 7, 9, 7, 8, 4, 5, 2, 6},
		[]string{"", "A", "B", "C", "C", "E", "D", "EG", "C", "FI", "J", "J", "H", "KL"}, 44, "ABCEFJLN",
		map[byte]float64{'D': 4, 'G': 4, 'H': 4, 'I': 2, 'K': 1, 'M': 4}},
	{"eight activities of a filter", "ABCDEFGH", []float64{2, 3, 2, 4, 4, 3, 5, 2},
		[]string{"", "", "A", "AB", "C", "C", "DE", "FG"}, 15, "ACEGH",
		map[byte]float64{'B': 1, 'D': 1, 'F': 6}},
}

func TestCriticalPathOfTextbooks(t *testing.T) {
	for _, n := range networks {
		times, circle := CriticalPath(network(n.names, n.seconds, n.needs))
		if circle != nil {
			t.Fatalf("%s: a circle %v", n.name, circle)
		}
		if times.Length != n.length {
			t.Errorf("%s: length %g, want %g", n.name, times.Length, n.length)
		}
		for i := range n.names {
			name := n.names[i]
			want := n.slack[name]
			if times.Slack[i] != want {
				t.Errorf("%s: slack of %c is %g, want %g", n.name, name, times.Slack[i], want)
			}
			if (times.Slack[i] == 0) != slices.Contains([]byte(n.critical), name) {
				t.Errorf("%s: %c critical: %v", n.name, name, times.Slack[i] == 0)
			}
		}
	}
}

func network(names string, seconds []float64, needs []string) []Task {
	var tasks []Task
	for i := range names {
		task := Task{Seconds: seconds[i], People: 1}
		for _, c := range needs[i] {
			task.Needs = append(task.Needs, slices.Index([]byte(names), byte(c)))
		}
		tasks = append(tasks, task)
	}
	return tasks
}

func TestCircleIsNamed(t *testing.T) {
	tasks := []Task{{}, {Needs: []int{0, 3}}, {Needs: []int{1}}, {Needs: []int{2}}, {Needs: []int{3}}}
	_, circle := CriticalPath(tasks)
	slices.Sort(circle)
	if !slices.Equal(circle, []int{1, 2, 3}) {
		t.Errorf("the circle is %v, want 1, 2, 3", circle)
	}
}

// One pair of hands does one thing after the other: the length is the sum. Nobody
// waits where there are as many as tasks: the length is the critical path's.
func TestScheduleAtItsEnds(t *testing.T) {
	for _, n := range networks {
		tasks := network(n.names, n.seconds, n.needs)
		times, _ := CriticalPath(tasks)
		var sum float64
		for _, s := range n.seconds {
			sum += s
		}
		if _, length, ok := Schedule(tasks, times, 1); !ok || length != sum {
			t.Errorf("%s, one person: %g, want %g", n.name, length, sum)
		}
		if _, length, ok := Schedule(tasks, times, len(tasks)); !ok || length != n.length {
			t.Errorf("%s, as many as tasks: %g, want %g", n.name, length, n.length)
		}
	}
	if _, _, ok := Schedule([]Task{{Seconds: 1, People: 3}}, Times{Order: []int{0}}, 2); ok {
		t.Error("two people do what needs three")
	}
}

// Whatever the network: no task before what it needs, never more people than there
// are, the length between its two bounds, the same twice.
func TestScheduleKeepsItsPromises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 25).Draw(t, "n")
		people := rapid.IntRange(1, 6).Draw(t, "people")
		tasks := make([]Task, n)
		var work float64
		for i := range tasks {
			tasks[i] = Task{Seconds: float64(rapid.IntRange(0, 9).Draw(t, "s")), People: rapid.IntRange(1, people).Draw(t, "p")}
			for j := range i {
				if rapid.IntRange(0, 4).Draw(t, "need") == 0 {
					tasks[i].Needs = append(tasks[i].Needs, j)
				}
			}
			work += tasks[i].Seconds * float64(tasks[i].People)
		}
		times, circle := CriticalPath(tasks)
		starts, length, ok := Schedule(tasks, times, people)
		if circle != nil || !ok {
			t.Fatal("no schedule")
		}
		var ends []float64
		for i, task := range tasks {
			for _, need := range task.Needs {
				if starts[i] < starts[need]+tasks[need].Seconds {
					t.Fatalf("%d starts before %d ends", i, need)
				}
			}
			ends = append(ends, starts[i]+task.Seconds)
		}
		for _, at := range starts {
			busy := 0
			for i := range tasks {
				if starts[i] <= at && at < ends[i] {
					busy += tasks[i].People
				}
			}
			if busy > people {
				t.Fatalf("%d people at %g, there are %d", busy, at, people)
			}
		}
		if length < times.Length-1e-9 || length < work/float64(people)-1e-9 {
			t.Fatalf("length %g is under what it can be: %g, %g", length, times.Length, work/float64(people))
		}
		again, _, _ := Schedule(tasks, times, people)
		if !slices.Equal(starts, again) || math.IsNaN(length) {
			t.Fatal("not the same twice")
		}
	})
}
