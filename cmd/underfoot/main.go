// Command underfoot decides whether an old floor can carry tile.
package main

import (
	"context"
	"os"
	"os/signal"

	"underfoot/cmd/internal/cli"
	"underfoot/cmd/internal/console"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	code := cli.Run(ctx, console.System(false), os.Args[1:])
	stop()
	os.Exit(code)
}
