package mask

// Order returns the indices of keys in rising order of key, equals in order of
// index: a sort by digits, the last first.
func Order(keys []uint32) []int32 {
	order, spare := make([]int32, len(keys)), make([]int32, len(keys))
	for i := range order {
		order[i] = int32(i)
	}
	var most uint32
	for _, k := range keys {
		most = max(most, k)
	}
	for shift := 0; shift < 32 && most>>shift > 0; shift += digitBits {
		byDigit(keys, order, spare, shift)
		order, spare = spare, order
	}
	return order
}

// digitBits is the size of a digit: three make 32 bits, and the count of each
// still fits the nearest cache.
const digitBits = 11

// byDigit puts the indices in from into to by one digit of their keys.
func byDigit(keys []uint32, from, to []int32, shift int) {
	var place [1 << digitBits]int32
	for _, k := range keys {
		place[k>>shift&(1<<digitBits-1)]++
	}
	sum := int32(0)
	for d, n := range place {
		place[d] = sum
		sum += n
	}
	for _, i := range from {
		d := keys[i] >> shift & (1<<digitBits - 1)
		to[place[d]] = i
		place[d]++
	}
}
