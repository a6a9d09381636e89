package colourlist

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"badgewright/reduce"
)

// western holds what Windows-1252 puts where Latin-1 has control characters.
const western = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ"

// TextOf decodes a file: UTF-8, or UTF-16 with its mark, as table programs
// save them; anything else is taken for Windows-1252, and note says so. Lines
// end in \n in what is returned.
func TextOf(data []byte) (text, note string, err error) {
	if err := notText(data); err != nil {
		return "", "", err
	}
	switch {
	case bytes.HasPrefix(data, []byte("\xef\xbb\xbf")):
		data = data[3:]
	case bytes.HasPrefix(data, []byte("\xff\xfe")):
		return lines(fromUTF16(data[2:], binary.LittleEndian)), "", nil
	case bytes.HasPrefix(data, []byte("\xfe\xff")):
		return lines(fromUTF16(data[2:], binary.BigEndian)), "", nil
	}
	if utf8.Valid(data) {
		return lines(string(data)), "", nil
	}
	return lines(fromWestern(data)), "The file is not in UTF-8; its letters were taken for Western European ones. If names look wrong, save it as CSV UTF-8.", nil
}

// notText refuses what is no table at all.
func notText(data []byte) error {
	switch {
	case len(data) > MaxBytes:
		return &reduce.Refusal{
			What: fmt.Sprintf("This file is larger than %d MB, which is far more than a list of colours needs.", MaxBytes>>20),
			Do:   "Keep only the columns code, name and colour, and save it as CSV.",
		}
	case bytes.HasPrefix(data, []byte("PK\x03\x04")):
		return &reduce.Refusal{What: "This is a workbook or another packed file, not plain text.", Do: "Open it in your table program and save it as CSV, or copy its rows and paste them here."}
	case bytes.HasPrefix(data, []byte("%PDF")):
		return &reduce.Refusal{What: "This is a PDF, which has no columns to read.", Do: "Ask the maker for the list as a table, or type its codes into one and save it as CSV."}
	case len(bytes.TrimSpace(data)) == 0:
		return &reduce.Refusal{What: "There is nothing in this list.", Do: "Give a line for each colour, below a header such as: code,name,hex."}
	case bytes.IndexByte(data, 0) >= 0 && !bytes.HasPrefix(data, []byte("\xff\xfe")) && !bytes.HasPrefix(data, []byte("\xfe\xff")):
		return &reduce.Refusal{What: "This is not a text file.", Do: "Save the list as CSV from your table program."}
	}
	return nil
}

func fromUTF16(data []byte, order binary.ByteOrder) string {
	units := make([]uint16, len(data)/2)
	for i := range units {
		units[i] = order.Uint16(data[2*i:])
	}
	return string(utf16.Decode(units))
}

func fromWestern(data []byte) string {
	high := []rune(western)
	var b strings.Builder
	for _, c := range data {
		if c >= 0x80 && c < 0xa0 {
			b.WriteRune(high[c-0x80])
		} else {
			b.WriteRune(rune(c))
		}
	}
	return b.String()
}

func lines(s string) string {
	return strings.ReplaceAll(strings.ReplaceAll(s, "\r\n", "\n"), "\r", "\n")
}
