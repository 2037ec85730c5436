module coilside/tusd

go 1.25

require github.com/tus/tusd/v2 v2.9.1

require (
	github.com/tus/lockfile v1.2.0 // indirect
	golang.org/x/exp v0.0.0-20250106191152-7588d65b2ba8 // indirect
)
