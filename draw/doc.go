// Package draw makes pictures of a rig: plan, sections, contours, charts. A picture is
// data: lines, areas and texts in millimeters on paper, each with its layer and the rig
// part that it shows. The back ends in draw/svg, draw/pdf and draw/png put the same
// picture on a screen and on paper; draw itself writes nothing.
//
// Terms: a view looks along one direction and has no vanishing point; u is to the right
// on the paper, v up, w toward the viewer, in m. What lies behind a face is hidden, and
// left out or dashed. A pen's weight says what a line means, before any color does:
// heavy is cut or carries, medium is seen, thin is measured or moves.
//
// Places on the paper: origin at the top left, x to the right, y down, mm. Lengths of
// the rig are m. Everything is drawn in the planned pose.
//
// Customary scales (1/8" = 1'-0", 1:50) and the conventions of line weights, dash-dot
// center lines, cut faces and dimension strings: common practice of engineering
// drawing (ISO 128, ISO 5455 for the metric scales, from memory).
package draw
