package report

import (
	"bytes"
	"encoding/json"
)

// object is a JSON object whose keys keep their order.
type object []member

type member struct {
	key   string
	value any
}

func (o *object) put(key string, value any) { *o = append(*o, member{key, value}) }

// set gives a key that the object has another value.
func (o object) set(key string, value any) {
	for i := range o {
		if o[i].key == key {
			o[i].value = value
		}
	}
}

// MarshalJSON implements json.Marshaler.
func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		for k, v := range [...]any{m.key, m.value} {
			if k > 0 {
				b.WriteByte(':')
			}
			if err := write(&b, v); err != nil {
				return nil, err
			}
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// write encodes v without escaping what only HTML minds.
func write(b *bytes.Buffer, v any) error {
	e := json.NewEncoder(b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return err
	}
	b.Truncate(b.Len() - 1) // the line end
	return nil
}
