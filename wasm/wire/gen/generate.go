package main

import (
	"encoding"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"badgewright/wasm/wire"
)

// writer gathers the TypeScript of every type that can be reached.
type writer struct {
	root    string
	sources map[string]*source
	names   map[string]reflect.Type // TypeScript name to the Go type that has it
	order   []string
	bodies  map[string]string
}

// Generate returns the TypeScript twin of the calls, those of the order apart,
// and of the further types given. root is the module's directory, where sources
// are read.
func Generate(root string, calls, order []wire.Call, further ...any) (string, error) {
	w := &writer{root: root, sources: map[string]*source{}, names: map[string]reflect.Type{}, bodies: map[string]string{}}
	var table strings.Builder
	table.WriteString("/** Every call: what it asks with and what it is answered with. */\nexport interface Calls {\n")
	for _, c := range slices.Concat(calls, order) {
		ask, err := w.refer(reflect.TypeOf(c.Ask))
		if err != nil {
			return "", err
		}
		answer, err := w.refer(reflect.TypeOf(c.Answer))
		if err != nil {
			return "", err
		}
		fmt.Fprintf(&table, "  %s: { ask: %s; answer: %s };\n", c.Name, ask, answer)
	}
	table.WriteString("}\n")
	fmt.Fprintf(&table, "\n/** The calls that the order's program answers; the pin's answers all others. */\nexport const ORDER_CALLS: readonly (keyof Calls)[] = [%s];\n", quoted(order))
	for _, f := range further {
		if _, err := w.refer(reflect.TypeOf(f)); err != nil {
			return "", err
		}
	}
	var out strings.Builder
	out.WriteString("// Written by `make generate` from the Go types of wasm/wire. Do not edit.\n\n")
	fmt.Fprintf(&out, "/** The version of the project value. */\nexport const FORMAT = %d;\n\n", wire.Format)
	for _, name := range w.order {
		out.WriteString(w.bodies[name])
		out.WriteString("\n")
	}
	out.WriteString(table.String())
	return out.String(), nil
}

func quoted(calls []wire.Call) string {
	names := make([]string, len(calls))
	for i, c := range calls {
		names[i] = fmt.Sprintf("'%s'", c.Name)
	}
	return strings.Join(names, ", ")
}

var (
	textType  = reflect.TypeFor[encoding.TextMarshaler]()
	bytesType = reflect.TypeFor[[]byte]()
)

// refer returns how TypeScript names a type, writing its body on first meeting.
func (w *writer) refer(t reflect.Type) (string, error) {
	switch {
	case t.Kind() == reflect.Struct && t.Implements(textType):
		// An exact figure travels as text; the page shows it and never computes with it.
		return "string", nil
	case t == bytesType:
		return "", fmt.Errorf("bytes cannot travel inside an answer; send them beside it")
	case t.Name() != "" && t.PkgPath() != "":
		return w.named(t)
	}
	return w.plain(t)
}

func (w *writer) plain(t reflect.Type) (string, error) {
	switch t.Kind() {
	case reflect.Bool:
		return "boolean", nil
	case reflect.String:
		return "string", nil
	case reflect.Pointer:
		return w.refer(t.Elem())
	case reflect.Slice:
		inner, err := w.refer(t.Elem())
		return inner + "[]", err
	case reflect.Array:
		inner, err := w.refer(t.Elem())
		return "[" + strings.TrimSuffix(strings.Repeat(inner+", ", t.Len()), ", ") + "]", err
	case reflect.Map:
		inner, err := w.refer(t.Elem())
		return "Record<string, " + inner + ">", err
	}
	if isNumber(t.Kind()) {
		return "number", nil
	}
	return "", fmt.Errorf("%s has no twin in TypeScript", t)
}

func isNumber(k reflect.Kind) bool {
	return k >= reflect.Int && k <= reflect.Float64 && k != reflect.Uintptr
}

// named writes the body of a type of ours once and returns its name.
func (w *writer) named(t reflect.Type) (string, error) {
	name := t.Name()
	if known, ok := w.names[name]; ok {
		if known != t {
			return "", fmt.Errorf("two types are called %s: %s and %s; rename one", name, known, t)
		}
		return name, nil
	}
	w.names[name] = t
	src, err := w.sourceOf(t.PkgPath())
	if err != nil {
		return "", err
	}
	body, err := w.body(t, src)
	if err != nil {
		return "", fmt.Errorf("%s: %w", t, err)
	}
	w.order = append(w.order, name)
	w.bodies[name] = comment("", src.docs[name]) + body
	return name, nil
}

func (w *writer) sourceOf(pkgPath string) (*source, error) {
	if s, ok := w.sources[pkgPath]; ok {
		return s, nil
	}
	s, err := readSource(w.root, pkgPath)
	w.sources[pkgPath] = s
	return s, err
}

func (w *writer) body(t reflect.Type, src *source) (string, error) {
	name := t.Name()
	switch {
	case t.Kind() == reflect.Struct:
		fields, err := w.fields(t, src)
		if fields == "" {
			return "export type " + name + " = Record<string, never>;\n", err
		}
		return "export interface " + name + " {\n" + fields + "}\n", err
	case t.Kind() == reflect.String && len(src.values[name]) > 0:
		return "export type " + name + " = \"" + strings.Join(src.values[name], "\" | \"") + "\";\n", nil
	}
	plain, err := w.plain(t)
	return "export type " + name + " = " + plain + ";\n", err
}

func (w *writer) fields(t reflect.Type, src *source) (string, error) {
	var out strings.Builder
	for i := range t.NumField() {
		f := t.Field(i)
		tag, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if tag == "-" || !f.IsExported() {
			continue
		}
		if tag == "" {
			return "", fmt.Errorf("field %s has no json name", f.Name)
		}
		kind, err := w.refer(f.Type)
		if err != nil {
			return "", fmt.Errorf("field %s: %w", f.Name, err)
		}
		if f.Type.Kind() == reflect.Pointer || strings.Contains(options, "omitempty") {
			tag += "?"
		}
		out.WriteString(comment("  ", src.docs[t.Name()+"."+f.Name]))
		fmt.Fprintf(&out, "  %s: %s;\n", tag, kind)
	}
	return out.String(), nil
}

func comment(indent, text string) string {
	if text == "" {
		return ""
	}
	return indent + "/** " + strings.ReplaceAll(text, "*/", "* /") + " */\n"
}
