package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
)

// source is what reflection cannot see of a package: comments and constants.
type source struct {
	docs   map[string]string   // by type, and by type.Field
	values map[string][]string // by string type, in the order of the source
}

const module = "badgewright"

// readSource parses one package of the module that lies under root.
func readSource(root, pkgPath string) (*source, error) {
	dir := filepath.Join(root, filepath.FromSlash(strings.TrimPrefix(strings.TrimPrefix(pkgPath, module), "/")))
	names, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil || len(names) == 0 {
		return nil, &fs.PathError{Op: "read package", Path: dir, Err: fs.ErrNotExist}
	}
	s := &source{docs: map[string]string{}, values: map[string][]string{}}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			return nil, err
		}
		s.read(file)
	}
	return s, nil
}

func (s *source) read(file *ast.File) {
	for _, decl := range file.Decls {
		d, ok := decl.(*ast.GenDecl)
		if !ok {
			continue
		}
		for _, spec := range d.Specs {
			switch spec := spec.(type) {
			case *ast.TypeSpec:
				s.readType(d, spec)
			case *ast.ValueSpec:
				s.readConst(d, spec)
			}
		}
	}
}

func (s *source) readType(d *ast.GenDecl, spec *ast.TypeSpec) {
	name := spec.Name.Name
	s.docs[name] = words(spec.Doc, d.Doc)
	shape, ok := spec.Type.(*ast.StructType)
	if !ok {
		return
	}
	for _, field := range shape.Fields.List {
		for _, id := range field.Names {
			s.docs[name+"."+id.Name] = words(field.Doc, field.Comment)
		}
	}
}

// readConst keeps the values of typed string constants.
func (s *source) readConst(d *ast.GenDecl, spec *ast.ValueSpec) {
	of, ok := spec.Type.(*ast.Ident)
	if d.Tok != token.CONST || !ok {
		return
	}
	for _, v := range spec.Values {
		lit, ok := v.(*ast.BasicLit)
		if !ok || lit.Kind != token.STRING {
			continue
		}
		if text, err := strconv.Unquote(lit.Value); err == nil {
			s.values[of.Name] = append(s.values[of.Name], text)
		}
	}
}

// words returns the first comment there is, on one line.
func words(groups ...*ast.CommentGroup) string {
	for _, g := range groups {
		if text := strings.TrimSpace(g.Text()); text != "" {
			return strings.Join(strings.Fields(text), " ")
		}
	}
	return ""
}
