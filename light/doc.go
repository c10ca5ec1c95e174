// Package light computes what light a soft overhead gives: lamps, the inside
// of the box, cloths, crate, skirts, and what arrives at a point below.
//
// Terms. Illuminance: luminous flux per area that arrives, lx. Exitance: flux
// per area that leaves, lm/m2. A Lambertian surface has the same luminance in
// all directions: exitance / pi. Form factor: the share of the flux leaving a
// Lambertian patch that arrives straight at another one.
//
// The engine works in box axes: the origin at the center of the cloth plane, z
// up toward the lamps, x and y along the box's size. SI units. It takes a plain
// Scene; Prepare works it out once, At answers for any point and any receptor.
//
// The chain, one file or a few for each:
//
//   - lamp, direct: an opening is an area. A Lambertian one is added up in
//     closed form (edge: Lambert 1760), any other by quadrature, finer where it
//     is near and where its distribution is steep (beam, beamcurve). What stands
//     between is cut away exactly (sight, shape.Cutter).
//   - chamber, pair, exchange, arrive: the box between roof, sides and cloths is
//     one closed room per gap, its openings black. Patches exchange light by
//     form factors in closed form (factor); nothing is made to fit. Lamps and
//     ribs in the way take their exact share of every patch's view (block, trace).
//   - forward, spot, peak, bounce, lobe: a cloth's lobe about the unscattered
//     ray, by a direct sum about the place where the straight way crosses it.
//   - crate, cell, wallglow: thin walls exact in every direction; reflecting
//     ones from one solved cell, by direction, with what returns to the cloth.
//   - gather, span, rows: the cloth as a sheet of Gauss points with polynomials
//     between; each receiver cuts it to its own steps, kinks and edges.
//   - levels: the same lamps at other levels, from what each gives alone.
//   - flux: a tally that does not use the solved rows.
//
// Accuracy as tested: closed forms 1e-6; the box within 0.1 % (level) and 0.3 %
// (upright) of the reference's best route; form factors close to 1e-13; light
// in = out + absorbed + lost to 1e-4, to 2e-3 with two lobes one over the other, to
// 1e-3 under beams of a few degrees.
package light
