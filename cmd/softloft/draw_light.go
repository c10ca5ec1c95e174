package main

import (
	"softloft/answer"
	"softloft/draw"
	"softloft/light"
)

// lightPictures are the maps of the light. A plan without light has none: check says why.
func lightPictures(a *answer.Answers) []draw.Picture {
	maps, err := light.MapsOf(a.Model)
	if err != nil {
		return nil
	}
	return draw.LightSheets(a, maps, string(a.Model.Plan.Sheet.Paper))
}
