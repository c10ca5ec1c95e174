// Package sight tells what each camera sees of a rig: every placed part that comes into
// frame, over which part of the camera's way, and what would get it out of the frame:
// trim or lens. It also tells how much of the cloth a camera and its operator hide from
// the performers' marks.
//
// Terms: a way is what a camera does during a shot (it stands and pans, runs on a track
// or an orbit, booms); the frame is the pyramid of directions that the sensor takes in;
// a body is what a part looks like: boxes, round bars and flat polygons in the room. A
// part is seen where something of it lies in the frame and nothing else is before it.
//
// Lengths are m, angles rad, axes of the room. Yaw 0 looks along +x and counts counter-
// clockwise from above, pitch counts upward from level; pan adds to the yaw, tilt to the
// pitch. The rig is seen in its planned pose.
//
// Exactness: the frame and the way are exact, boxes and polygons are clipped exactly,
// round bars by the two planes through the lens that touch them. A part that comes into
// frame between two looks is not missed: a stretch of the way is left out only where a
// bound on how far lens and aim can move over it proves that the part stays outside or
// behind one face. See docs/method-sight.md, also for what is assumed of sizes that
// nobody gives.
//
// Sources: angle of view 2·atan(d/2f) of a rectilinear lens at infinity, squeeze on the
// horizontal: optics textbooks, tables beside the tests; clipping after Sutherland and
// Hodgman; branch and bound with Lipschitz bounds: from first principles.
package sight
