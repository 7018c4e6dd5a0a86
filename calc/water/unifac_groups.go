package water

// Group is a piece of a molecule in the polyol UNIFAC, with its volume and
// surface over those of a standard segment.
type Group uint8

// The groups. Alc marks a carbon without an OH in an alcohol, WithOH a carbon
// that carries one.
const (
	WaterGroup Group = iota
	CH3Alc
	CH2Alc
	CH2WithOH
	CHWithOH
	CWithOH
	OH
	COOH
	CHOEther // the carbon and oxygen that close a sugar ring
	CH2Ether // the CH2 and oxygen that close one; volumes only from here on
	CH2NH2
	CHNH2
	CH2NH
	CH3N
	CH3
	CH2
	CH
	COO
	groups
)

// size is a group's volume R and surface Q, and its row in the interactions
// (−1: volume only).
type size struct {
	r, q float64
	main int
}

// The main groups that interact.
const (
	mainWater = iota
	mainAlc
	mainCH2OH
	mainCHOH
	mainOH
	mainCOOH
	mains
	volumeOnly = -1
)

// Volumes and surfaces after Bondi 1964 as in the published UNIFAC tables
// (Hansen et al. 1991); the ones with an interaction row as used by Marcolli &
// Peter 2005, which leaves R and Q unchanged. The nitrogen groups are recalled
// from the same tables.
var sizes = [groups]size{
	WaterGroup: {0.92, 1.4, mainWater},
	CH3Alc:     {0.9011, 0.848, mainAlc},
	CH2Alc:     {0.6744, 0.54, mainAlc},
	CH2WithOH:  {0.6744, 0.54, mainCH2OH},
	CHWithOH:   {0.4469, 0.228, mainCHOH},
	CWithOH:    {0.2195, 0, mainCHOH},
	OH:         {1.0, 1.2, mainOH},
	COOH:       {1.3013, 1.224, mainCOOH},
	CHOEther:   {0.6908, 0.468, volumeOnly},
	CH2Ether:   {0.9183, 0.78, volumeOnly},
	CH2NH2:     {1.3692, 1.236, volumeOnly},
	CHNH2:      {1.1417, 0.924, volumeOnly},
	CH2NH:      {1.207, 0.936, volumeOnly},
	CH3N:       {1.1865, 0.94, volumeOnly},
	CH3:        {0.9011, 0.848, volumeOnly},
	CH2:        {0.6744, 0.54, volumeOnly},
	CH:         {0.4469, 0.228, volumeOnly},
	COO:        {1.38, 1.2, volumeOnly},
}

// interactions is a(m, n) in kelvin, row m on column n: Marcolli & Peter 2005,
// with the acid row and column of Peng, Chan & Chan 2001. No term
// changes with temperature.
var interactions = [mains][mains]float64{
	mainWater: {mainAlc: 162.3, mainCH2OH: -89.71, mainCHOH: -89.71, mainOH: -153.0, mainCOOH: -69.29},
	mainAlc:   {mainWater: 1890.0, mainOH: 986.5, mainCOOH: 663.5},
	mainCH2OH: {mainWater: 2314.0, mainOH: 986.5, mainCOOH: 663.5},
	mainCHOH:  {mainWater: 2314.0, mainOH: 986.5, mainCOOH: 663.5},
	mainOH:    {mainWater: 276.4, mainAlc: 156.4, mainCH2OH: 156.4, mainCHOH: 156.4, mainCOOH: 224.39},
	mainCOOH:  {mainWater: -145.88, mainAlc: 315.3, mainCH2OH: 315.3, mainCHOH: 315.3, mainOH: -103.03},
}

// Molecule counts the groups of one molecule, by group. (An array: sums over it
// run in one order, so a fit made with it repeats to the last digit.)
type Molecule [groups]float64

// Size is the molecule's volume over that of a water molecule: the R of
// Flory-Huggins where no data fix it.
func (m Molecule) Size() float64 {
	v := 0.0
	for g, n := range m {
		v += n * sizes[g].r
	}
	return v / sizes[WaterGroup].r
}
