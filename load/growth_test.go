package load

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// The room to grow is a statement about another plan: with that much more on the lamps the
// limit that is named first is just reached, and no other is over.
func TestRoomToGrow(t *testing.T) {
	base := hungSquare{above: 3, lengths: all(3), ribs: ribsAt, lamps: onRibs, hung: "  safety: {kit: wire}\n"}
	for name, text := range map[string]string{
		"stress":    base.text(),
		"points":    strings.ReplaceAll(base.text(), "allows: 20 kN", "allows: 800 N"),
		"rope":      strings.ReplaceAll(base.text(), "breaks: 120 kN", "breaks: 6 kN"),
		"provision": strings.ReplaceAll(base.text(), "allows: 20 kN", "allows: 800 N") + "provision: {reserve: 1.5}\n",
	} {
		t.Run(name, func(t *testing.T) {
			got, _ := analyze(t, text)
			room := got.RoomToGrow
			if room == nil || !(room.Mass > 0) {
				t.Fatalf("room %+v", room)
			}
			each := 9.5 + float64(room.Mass)/4
			_, found := analyze(t, strings.ReplaceAll(text, "mass: 9.5 kg", fmt.Sprintf("mass: %.15g kg", each)))
			f := named(found, room.FirstLimit)
			near(t, room.FirstLimit, f.Value/f.Limit, 1, 1e-5)
			for _, f := range found {
				if f.Value > f.Limit*(1+1e-5) {
					t.Errorf("%s is over: %g of %g", f.ID, f.Value, f.Limit)
				}
			}
		})
	}
}

// A rope that may carry F: the diagonal rule puts half of the weight on it, more than any
// loss does, so that 2·F/g less today's 66.9279 kg may still go up.
func TestRoomByTheDiagonalRule(t *testing.T) {
	text := strings.ReplaceAll(hungSquare{above: 3, lengths: all(3), ribs: ribsAt, lamps: onRibs, hung: "  safety: {kit: wire}\n"}.text(), "breaks: 120 kN", "breaks: 6 kN")
	got, found := analyze(t, text)
	limit := 6000 * 0.8 / 10 // less the knot, over DGUV 215-313's factor of wire rope over people
	near(t, "limit", named(found, "load.line.L1").Limit, limit, 1e-12)
	near(t, "room, kg", float64(got.RoomToGrow.Mass), 2*limit/9.80665-66.9279, 1e-4)
}

// Over already: no room, and which limit that is. Without lamps nothing is told.
func TestNoRoom(t *testing.T) {
	text := strings.ReplaceAll(hungSquare{above: 3, lengths: all(3), ribs: ribsAt, lamps: onRibs}.text(), "allows: 20 kN", "allows: 100 N")
	got, _ := analyze(t, text)
	if r := got.RoomToGrow; r == nil || r.Mass != 0 || !strings.HasPrefix(r.FirstLimit, "load.point.") {
		t.Errorf("room %+v", r)
	}
	got, _ = analyze(t, hungSquare{above: 3, lengths: all(3)}.text())
	if got.RoomToGrow != nil {
		t.Errorf("room without lamps: %+v", got.RoomToGrow)
	}
	if math.IsNaN(float64(got.Mass)) {
		t.Error("no mass")
	}
}
