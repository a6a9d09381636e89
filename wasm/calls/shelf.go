package calls

// shelf keeps the few values used last, oldest out first.
type shelf[V any] struct {
	room  int
	keys  []string // oldest first
	items map[string]V
}

func newShelf[V any](room int) *shelf[V] {
	return &shelf[V]{room: room, items: map[string]V{}}
}

// get finds a value and marks it as just used.
func (s *shelf[V]) get(key string) (V, bool) {
	v, ok := s.items[key]
	if ok {
		s.forget(key)
		s.keys = append(s.keys, key)
	}
	return v, ok
}

// put keeps a value, dropping the one unused longest when there is no room.
func (s *shelf[V]) put(key string, v V) {
	s.forget(key)
	s.keys = append(s.keys, key)
	s.items[key] = v
	for len(s.keys) > s.room {
		delete(s.items, s.keys[0])
		s.keys = s.keys[1:]
	}
}

// dropIf drops every value whose key answers yes.
func (s *shelf[V]) dropIf(yes func(key string) bool) {
	kept := s.keys[:0]
	for _, k := range s.keys {
		if yes(k) {
			delete(s.items, k)
			continue
		}
		kept = append(kept, k)
	}
	s.keys = kept
}

func (s *shelf[V]) forget(key string) {
	for i, k := range s.keys {
		if k == key {
			s.keys = append(s.keys[:i], s.keys[i+1:]...)
			return
		}
	}
}
