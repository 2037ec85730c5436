import Observation

/// What lies above the screen because the person opened it.
@MainActor @Observable
final class Overlays {
    /// The ways to other screens.
    var menu = false
    /// The owner's summary.
    var summary = false
    /// The camera reads an office's code.
    var scan = false

    /// Whether anything lies there.
    var any: Bool { menu || summary || scan }
}
