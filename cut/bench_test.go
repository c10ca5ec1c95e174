package cut

import "testing"

// hard are jobs that the search cannot see through: many lengths, many to a bar.
func hard(pieces, sizes int, longest float64, limited bool) Job {
	job := Job{Stock: []Stock{{Length: 60.96, Count: Unlimited, Cost: 610}, {Length: 30.48, Count: 4, Cost: 305}, {Length: 15.24, Count: 9, Cost: 153}}}
	if limited {
		job.Stock[0].Count = 2
	}
	for i := range pieces {
		job.Pieces = append(job.Pieces, 1+longest*float64(i*7919%sizes)/float64(sizes))
	}
	return job
}

func BenchmarkHard(b *testing.B) {
	for _, c := range []struct {
		name string
		job  Job
	}{
		{"60 pieces, 40 lengths of rope", hard(60, 40, 14, false)},
		{"60 pieces, 40 lengths, limited", hard(60, 40, 14, true)},
		{"300 pieces, 100 lengths", hard(300, 100, 20, false)},
		{"1500 pieces, 1500 lengths", hard(1500, 1499, 14, false)},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				r, err := Solve(c.job)
				if err != nil {
					b.Fatal(err)
				}
				b.ReportMetric(float64(r.Gap())/float64(r.Cost)*100, "%gap")
			}
		})
	}
}
