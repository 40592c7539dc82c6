package report

import "ripplewright/internal/answer/model"

// Batch says of each phase what is made, what of that goes into the tubs and
// what is left over, which belongs to no tub.
type Batch struct {
	Dense Made `json:"dense"`
	Foam  Made `json:"foam"`
}

// Made is one phase of the batch: made = used + left.
type Made struct {
	MadeG  Number `json:"made_g"`
	MadeML Number `json:"made_ml"`
	UsedG  Number `json:"used_g"`
	UsedML Number `json:"used_ml"`
	LeftG  Number `json:"left_g"`
	LeftML Number `json:"left_ml"`
}

func batchReport(r *model.Result) Batch {
	return Batch{made(&r.Dense), made(&r.Foam)}
}

func made(of *model.Phase) Made {
	p := of.Portion
	return Made{
		Number(p.MadeG), Number(p.MadeML),
		Number(p.MassG), Number(p.VolumeML),
		Number(p.LeftG), Number(p.LeftML),
	}
}
