package quantity

func format(x float64, d Dimension) string { return "" }
