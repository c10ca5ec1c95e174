package light

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// roomOf is a room about the origin, from the floor up.
func roomOf(x, y, z, floor, walls, ceiling float64) Room {
	return Room{Low: r3.Vec{X: -x / 2, Y: -y / 2}, High: r3.Vec{X: x / 2, Y: y / 2, Z: z}, Floor: floor, Ceiling: ceiling,
		Walls: [4]float64{walls, walls, walls, walls}}
}

// hallOf works out a room at a fineness; scene nil is a room without a box.
func hallOf(t testing.TB, room Room, scene *Scene, pose shape.Pose, along int) *Hall {
	t.Helper()
	h, err := prepareRoom(room, scene, pose, along)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// panelRoom is the panel of the reference table in its room.
func panelRoom(t testing.TB, along int) (*Engine, *Hall) {
	t.Helper()
	s := open(3.658, 3.658)
	s.Lamps[0].Lumens *= 1000
	return prepared(t, s), hallOf(t, roomOf(10, 12, 6, 0.2, 0.5, 0.1), &s, shape.At(r3.Vec{Z: 4.572}), along)
}

// The floor of a room under a panel, direct and indirect, against an unbiased path
// tracer and a fine radiosity.
func TestRoomFloor(t *testing.T) {
	e, h := panelRoom(t, patchesAlong)
	l := h.Light(e)
	column, rows := table(t, "room_floor.csv")
	total, indirect := spread{reference: tracer + " and " + radiosity}, spread{reference: tracer + " and " + radiosity}
	for _, row := range rows {
		p := r3.Vec{X: column(row, "x"), Y: column(row, "y")}
		back := l.At(p, up, Flat)
		indirect.add(back, column(row, "indirect"))
		total.add(back+e.At(h.pose.In(p), up, Flat), column(row, "total"))
	}
	t.Logf("%d patches, closure %.2g", h.Patches(), h.Closure())
	indirect.check(t, "room floor, indirect", 0.01, 0.03)
	total.check(t, "room floor, in all", 0.01, 0.03)
	if h.Closure() > 1e-3 {
		t.Errorf("closure %g", h.Closure())
	}
}

// A finer mesh changes what the room throws back on the action's area, on the walls
// and into a face by less than 0.3 % of what arrives in all; by 3 % in the gap behind a
// set wall that is as wide as one patch.
func TestRoomMesh(t *testing.T) {
	t.Parallel()
	for _, walls := range []bool{false, true} {
		room, scene, pose := ballroom(walls)
		e := prepared(t, scene)
		lux := func(along int) (out []float64, l *RoomLight) {
			h := hallOf(t, room, &scene, pose, along)
			l = h.Light(e)
			t.Logf("walls %v, along %d: %d patches, closure %.2g", walls, along, h.Patches(), h.Closure())
			for _, r := range roomReceivers {
				out = append(out, l.At(r.p, r.n, Flat))
			}
			return out, l
		}
		coarse, _ := lux(patchesAlong)
		fine, _ := lux(2 * patchesAlong)
		for i, r := range roomReceivers {
			all := fine[i] + e.At(pose.In(r.p), pose.InDirection(r.n), Flat)
			t.Logf("%v facing %v: %.5g lx and %.5g lx of %.5g lx in all: %+.3f %%, of its own %+.3f %%", r.p, r.n, coarse[i], fine[i], all, 100*(coarse[i]-fine[i])/all, 100*(coarse[i]/fine[i]-1))
			most := 0.003 * all
			if walls && i == behindWall {
				most = 0.03 * all
			}
			if d := coarse[i] - fine[i]; d > most || d < -most {
				t.Errorf("receiver %d: %g lx, with half the step %g lx, of %g lx in all", i, coarse[i], fine[i], all)
			}
		}
	}
}

// behindWall is the meter in the gap.
const behindWall = 11

// roomReceivers are meters in the ballroom: on the area, on walls and floor, faces.
var roomReceivers = []walkReceiver{
	{r3.Vec{X: 0.1, Y: 0.2, Z: 1.5}, r3.Vec{Z: 1}}, {r3.Vec{X: 2.5, Y: -1.5, Z: 1.5}, r3.Vec{Z: 1}}, {r3.Vec{X: 1, Y: 1, Z: 1.6}, r3.Vec{X: 1}},
	{r3.Vec{X: -2, Y: 1, Z: 1.6}, r3.Vec{Y: -1}}, {r3.Vec{X: 0, Y: 0, Z: 1.6}, r3.Vec{Z: -1}}, {r3.Vec{X: 3, Y: 9.144, Z: 2}, r3.Vec{Y: -1}},
	{r3.Vec{X: 10.668, Y: -3, Z: 5}, r3.Vec{X: -1}}, {r3.Vec{X: 0, Y: -9.144, Z: 0.5}, r3.Vec{Y: 1}}, {r3.Vec{X: 7, Y: 6, Z: 0}, r3.Vec{Z: 1}},
	{r3.Vec{X: 2, Y: 2, Z: 9.144}, r3.Vec{Z: -1}}, {r3.Vec{X: 0, Y: 7, Z: 1.5}, r3.Vec{Y: -0.6, Z: 0.8}}, {r3.Vec{X: 1, Y: 8.2, Z: 1}, r3.Vec{Z: 1}},
}
