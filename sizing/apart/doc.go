// Package apart says what an eye tells apart on a pin: its lines, areas and
// letters from a distance, and its colours where they meet.
package apart
