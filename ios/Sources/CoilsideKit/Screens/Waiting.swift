import CoilsideCore

/// A waiting time as a block of a screen carries it.
public struct Dwell: Sendable, Equatable {
    /// What waits.
    public let title: String
    /// Where it stands.
    public let state: DwellState
    /// The same in words.
    public let stateText: String
    /// When the least and the most are over, UTC milliseconds.
    public let leastAtUtcMs: Int64, mostAtUtcMs: Int64
    /// The same to read aloud.
    public let leastClock: String, mostClock: String
    /// From the start to the least, milliseconds.
    public let leastMs: Int64
    /// What to do when it is over.
    public let then: String

    /// Its clock runs.
    public var runs: Bool { state == .running || state == .ready || state == .over }

    /// The waiting time of a block, where it is one.
    public init?(_ block: Block) {
        guard
            case .dwell(
                let title, let state, let stateText, let leastAt, let mostAt, let leastClock, let mostClock, let leastMs, let then) = block
        else { return nil }
        self.title = title
        self.state = state
        self.stateText = stateText
        leastAtUtcMs = leastAt
        mostAtUtcMs = mostAt
        self.leastClock = leastClock
        self.mostClock = mostClock
        self.leastMs = leastMs
        self.then = then
    }

    /// What the big digits say: the time to the least, then the time to the most, then the time past it; with the key of its words.
    public func digits(nowUtcMs: Int64) -> (text: String, key: String) {
        if nowUtcMs < leastAtUtcMs { return (Self.span(leastAtUtcMs - nowUtcMs), "shell-to-least") }
        if nowUtcMs < mostAtUtcMs { return (Self.span(mostAtUtcMs - nowUtcMs), "shell-to-most") }
        return ("+" + Self.span(nowUtcMs - mostAtUtcMs), "shell-past-most")
    }

    /// How much of the least is over, 0…1.
    public func share(nowUtcMs: Int64) -> Double {
        guard leastMs > 0 else { return 1 }
        return min(1, max(0, 1 - Double(leastAtUtcMs - nowUtcMs) / Double(leastMs)))
    }

    /// Minutes and seconds, and hours where there are any. A part of a second counts as a whole one.
    static func span(_ ms: Int64) -> String {
        let all = (ms + 999) / 1000
        let two = { (part: Int64) in part < 10 ? "0\(part)" : "\(part)" }
        let (hours, minutes, seconds) = (all / 3600, all / 60 % 60, two(all % 60))
        return hours > 0 ? "\(hours):\(two(minutes)):\(seconds)" : "\(minutes):\(seconds)"
    }
}

/// What the clocks of a screen ask of the shell.
public enum Waiting {
    /// Every waiting time of a screen, those inside of steps too.
    public static func all(_ blocks: [Block]) -> [Dwell] {
        blocks.flatMap { block in
            if case .step(_, _, _, _, _, let inside) = block { return all(inside) }
            return Dwell(block).map { [$0] } ?? []
        }
    }

    /// The waiting time that a screen is about: the only one that runs, where no more than one step is shown.
    public static func alone(_ blocks: [Block]) -> Dwell? {
        let running = all(blocks).filter(\.runs)
        let steps = blocks.filter { if case .step = $0 { true } else { false } }
        return running.count == 1 && steps.count <= 1 ? running[0] : nil
    }

    /// Whether nothing beside the waiting time asks for a hand: then its digits may be as large as the screen.
    public static func onlyWaits(_ blocks: [Block]) -> Bool {
        blocks.allSatisfy { block in
            switch block {
            case .step(_, _, _, _, _, let inside): onlyWaits(inside)
            case .number, .textEntry, .choice, .shot: false
            default: true
            }
        }
    }

    /// Whether a clock runs anywhere: then the display stays on.
    public static func runs(_ blocks: [Block]) -> Bool { all(blocks).contains(where: \.runs) }

    /// The next moment at which a running waiting time passes a limit, UTC milliseconds: then the screen is read again.
    public static func nextLimit(_ blocks: [Block], nowUtcMs: Int64) -> Int64? {
        all(blocks).filter(\.runs).flatMap { [$0.leastAtUtcMs, $0.mostAtUtcMs] }.filter { $0 > nowUtcMs }.min()
    }
}
