package quantity

// Exact definitions: the international foot and avoirdupois pound of 1959 and
// the standard gravity, as given in NIST Special Publication 811 (2008),
// Appendix B and footnotes (inch 25.4 mm, pound 0.453 592 37 kg, standard
// acceleration of free fall 9.806 65 m/s2).
const (
	metresPerInch    = 0.0254
	metresPerFoot    = 12 * metresPerInch
	kilogramPerPound = 0.45359237
	gravity          = 9.80665
	newtonPerPound   = kilogramPerPound * gravity
	pascalPerPSF     = newtonPerPound / (metresPerFoot * metresPerFoot)
	pascalPerPSI     = newtonPerPound / (metresPerInch * metresPerInch)
	// grams on a square metre for a pound on 1000 square feet
	gramsPerEmission = 1000 * kilogramPerPound / (1000 * metresPerFoot * metresPerFoot)
)

// A unit is one way to write a dimension. A value v in it is v*mul/div in the
// base unit; two whole numbers keep inches and millimetres exact.
type unit struct {
	symbol   string // as Write prints it
	mul, div float64
	names    []string // as people write it, in lower case
}

// base is the value in the base unit of v in the unit.
func (u *unit) base(v float64) float64 { return v * u.mul / u.div }

// from is the value in the unit of b in the base unit.
func (u *unit) from(b float64) float64 { return b * u.div / u.mul }

var (
	inch       = &unit{"in", 1, 1, []string{"inches", "inch", "ins", "in", `"`}}
	foot       = &unit{"ft", 12, 1, []string{"feet", "foot", "ft", "'"}}
	yard       = &unit{"yd", 36, 1, []string{"yards", "yard", "yds", "yd"}}
	millimetre = &unit{"mm", 5, 127, []string{"millimetres", "millimeters", "millimetre", "millimeter", "mm"}}
	centimetre = &unit{"cm", 50, 127, []string{"centimetres", "centimeters", "centimetre", "centimeter", "cm"}}
	metre      = &unit{"m", 5000, 127, []string{"metres", "meters", "metre", "meter", "m"}}

	squareFoot  = &unit{"ft2", 1, 1, []string{"square feet", "square foot", "sq. ft", "sq ft", "sqft", "sf", "ft2", "ft^2"}}
	squareMetre = &unit{"m2", 1, metresPerFoot * metresPerFoot,
		[]string{"square metres", "square meters", "square metre", "square meter", "sq. m", "sq m", "sqm", "m2", "m^2"}}

	psf = &unit{"psf", 1, 1, []string{"psf", "lb/ft2", "lbs/ft2", "lb/sq ft", "lbs/sq ft", "lb per sq ft",
		"pounds per square foot"}}
	kilopascal   = &unit{"kPa", 1000, pascalPerPSF, []string{"kpa", "kn/m2", "kn/m^2", "kilopascals"}}
	kilogramOnM2 = &unit{"kg/m2", gravity, pascalPerPSF, []string{"kg/m2", "kg/m^2"}}

	pound    = &unit{"lb", 1, 1, []string{"pounds", "pound", "lbs", "lb"}}
	kilogram = &unit{"kg", 1, kilogramPerPound, []string{"kilograms", "kilogram", "kilos", "kg"}}

	psi        = &unit{"psi", 1, 1, []string{"psi", "lb/in2", "lbs/in2", "pounds per square inch"}}
	megapascal = &unit{"MPa", 1e6, pascalPerPSI, []string{"mpa", "n/mm2", "n/mm^2", "megapascals"}}

	percent = &unit{"%", 1, 1, []string{"% rh", "%rh", "% mc", "percent rh", "percent", "per cent", "pct", "%", "rh"}}
	point   = &unit{"points", 1, 1, []string{"percentage points", "percentage point", "points", "point", "pp", "%"}}

	day  = &unit{"days", 1, 1, []string{"days", "day", "d"}}
	week = &unit{"weeks", 7, 1, []string{"weeks", "week", "wk"}}
	// months and years as the shortest that they can be, since waiting is what days are asked for
	month = &unit{"months", 28, 1, []string{"months", "month"}}
	years = &unit{"years", 365, 1, []string{"years", "year", "yr"}}

	emissionLb = &unit{"lb/1000 ft2", 1, 1, []string{"lb/1000 ft2", "lbs/1000 ft2", "lb/1000 sq ft", "lbs/1000 sq ft",
		"lb per 1000 ft2", "lb per 1000 sq ft", "pounds", "pound", "lbs", "lb", "#"}}
	emissionGram = &unit{"g/m2", 1, gramsPerEmission, []string{"g/m2", "g/m^2"}}
	plain        = &unit{"", 1, 1, nil}
)

// units are the ways to write each dimension. The first is the one that US
// readers see, the second the one that metric readers see; a dimension whose
// first unit is plain may stand without any.
var units = [...][]*unit{
	Number:   {plain, plain},
	Length:   {inch, millimetre, foot, metre, centimetre, yard},
	Area:     {squareFoot, squareMetre},
	Load:     {psf, kilopascal, kilogramOnM2},
	Weight:   {pound, kilogram},
	Strength: {psi, megapascal},
	Ratio:    {plain, plain},
	Percent:  {percent, percent},
	Year:     {plain, plain},
	Days:     {day, day, week, month, years},
	Emission: {emissionLb, emissionGram},
	Points:   {point, point},
}

// needsUnit reports whether a number without a unit is asked back.
func (d Dimension) needsUnit() bool {
	return d == Length || d == Area || d == Load || d == Weight || d == Strength
}

// unit is the one in which readers of the system see the dimension.
func (d Dimension) unit(sys System) *unit { return units[d][sys] }
