// Package head is a plain sculpted head of our own, and what stands in its own light: a
// triangle mesh with smooth normals, rays against it, and pictures of it from before.
//
// Axes of a head: the origin between the eyes on the front of the eyeballs, x where the
// face looks, y to its left, z up. Lengths are m. The sculpture is a signed distance
// field of rounded solids that melt into each other; its measures (0.23 m from chin to
// crown, 0.15 m across, eyes half-way up, brows 12 mm before and 22 mm over the eyes)
// are common practice. It is nobody's likeness and reads no file.
//
//   - sculpt: the field. form: its rounded solids.
//   - mesh: the field's surface as triangles: one vertex in each cell that the surface
//     crosses (surface nets, after Gibson 1998, from memory), drawn onto the surface.
//   - block, ray: what stands between a place and a light, by rays against the
//     triangles in a tree of boxes (Möller and Trumbore 1997, from memory).
//   - view: which triangle each picture element shows, seen from far off.
//
// No light is computed here.
package head
