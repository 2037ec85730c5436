/// A button that must be held, because what it does cannot be taken back. A press that cannot be held (a switch, a voice, a screen reader)
/// asks for a second one instead.
public struct Hold: Sendable, Equatable {
    /// How long it must be held, milliseconds.
    public static let heldMs: Int64 = 1500
    /// How long the second press may take, milliseconds.
    public static let armedMs: Int64 = 6000

    private var since: Int64?
    private var armedAt: Int64?

    /// Nothing is pressed.
    public init() {}

    /// It is pressed.
    public var isHeld: Bool { since != nil }

    /// A second press is waited for.
    public func isArmed(nowMs: Int64) -> Bool { armedAt.map { nowMs - $0 < Self.armedMs } ?? false }

    /// The finger is set down.
    public mutating func down(nowMs: Int64) { if since == nil { since = nowMs } }

    /// Whether it has been held long enough: once, while it is still held.
    public mutating func fires(nowMs: Int64) -> Bool {
        guard let since, nowMs - since >= Self.heldMs else { return false }
        self.since = nil
        return true
    }

    /// The finger is lifted, or slid away.
    public mutating func up() { since = nil }

    /// A press that cannot be held; whether it was the second one.
    public mutating func activate(nowMs: Int64) -> Bool {
        if isArmed(nowMs: nowMs) {
            armedAt = nil
            return true
        }
        armedAt = nowMs
        return false
    }
}
