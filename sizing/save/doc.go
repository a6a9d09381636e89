// Package save writes and reads the project file: everything a person has made
// of their drawings, and the drawings themselves, in one file that they keep,
// send and open elsewhere.
//
// # The file, format 2
//
// A project file is a ZIP archive (PKWARE APPNOTE 6.3.x, without ZIP64,
// encryption, comments or more than one disk), named "….badgewright", with
// these entries in this order:
//
//	project.json          the list of what is in it, UTF-8 JSON
//	drawings/ID.EXT       a drawing as it was brought, byte for byte
//	drawings/ID-2.EXT     its second picture, when lines and colours came apart
//	pictures/ID.EXT       a picture that the project names: a flawed piece, or a maker's proof
//	thumbnail.png         a small picture of the pin, up to 512 px; may be missing
//
// project.json is one object:
//
//	{
//	  "format": 2,
//	  "project": { "format": 2, "order": … },
//	  "drawings": [ { "id": "drawing-1", "files": [ { "path": "drawings/drawing-1.svg", "name": "lighthouse.svg" } ] } ],
//	  "pictures": [ { "id": "picture-1", "path": "pictures/picture-1.jpg" } ]
//	}
//
// project is the page's project value: lengths in mm, money as exact decimals in
// strings, places in shares of the drawing. The drawings that its designs speak of
// are all there. pictures is left out where there are none, as in files of before there were
// any; one that the project names may be missing, as it may be on the device that saved it.
// Drawings and pictures are numbered in the order in which the project names them. They are stored as they are, but for SVG, which is deflated
// like project.json. Every entry is dated 1980-01-01, so that one project makes one
// file, to the byte.
//
// # Older and newer files
//
// A file of an older format is brought forward, one small step for each format
// (forward.go), before anything else looks at it. A newer one is refused.
//
// # What a file may not do
//
// A file comes from anywhere. Its directory is measured before it is read, what an
// entry unpacks to is bounded (limits.go), names that lead elsewhere are refused, and
// every number and text of the project is looked at before it is used. An SVG may
// hold a script: it is never run, since pages show drawings as pictures, and it is
// kept, since the drawing is the person's own; opening says so.
package save
