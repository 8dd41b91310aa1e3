package quantity

// WriteExact is a text that Read gives back as exactly the same range, in the
// units of the system where they can say it and in base units elsewhere. It
// holds for every range that Read can give.
func WriteExact(d Dimension, r Range, sys System) string {
	if text := Write(d, r, sys); isRead(d, text, r, sys) {
		return text
	}
	return arrange(d, r, func(v float64) string { return exact(d, v, sys) })
}

// exact is one value: as printed where that says it all, else in decimals of
// the system's unit, else of the base unit.
func exact(d Dimension, v float64, sys System) string {
	u := d.unit(sys)
	for _, text := range []string{printed(d, v, sys), withUnit(d, decimal(u.from(v)), u)} {
		if isRead(d, text, Point(v), sys) {
			return text
		}
	}
	return withUnit(d, decimal(v), d.unit(US))
}

// isRead reports whether the text is read as the range.
func isRead(d Dimension, text string, r Range, sys System) bool {
	got, err := Read(d, text, sys)
	return err == nil && got == r
}
