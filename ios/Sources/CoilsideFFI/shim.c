// SwiftPM builds a C target only where it finds a C source. The header beside it is all there is: the code is the core's library.
