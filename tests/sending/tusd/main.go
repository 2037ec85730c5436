// tusd, the reference server of tus 1.0 (https://github.com/tus/tusd), as its library: its own handler over its own store of
// files. Only the name of an upload is chosen here: the digest that the client tells as metadata, since our devices know the
// address of a photograph before they ask.
//
//	tusd FOLDER
package main

import (
	"fmt"
	"net"
	"net/http"
	"os"

	"github.com/tus/tusd/v2/pkg/filelocker"
	"github.com/tus/tusd/v2/pkg/filestore"
	"github.com/tus/tusd/v2/pkg/handler"
)

const path = "/api/v1/photos/"

func named(hook handler.HookEvent) (handler.HTTPResponse, handler.FileInfoChanges, error) {
	return handler.HTTPResponse{}, handler.FileInfoChanges{ID: hook.Upload.MetaData["sha256"]}, nil
}

func main() {
	if err := run(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(folder string) error {
	composer := handler.NewStoreComposer()
	filestore.New(folder).UseIn(composer)
	filelocker.New(folder).UseIn(composer)
	tus, err := handler.NewHandler(handler.Config{BasePath: path, StoreComposer: composer, PreUploadCreateCallback: named})
	if err != nil {
		return err
	}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return err
	}
	// As the program tusd does, with and without the slash.
	mux := http.NewServeMux()
	mux.Handle(path, http.StripPrefix(path, tus))
	mux.Handle(path[:len(path)-1], http.StripPrefix(path[:len(path)-1], tus))
	fmt.Printf("http://%s\n", listener.Addr())
	return http.Serve(listener, mux)
}
