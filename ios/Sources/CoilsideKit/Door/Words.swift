/// The shell's own words, as the core has them in the language of the screen.
public struct Words: Sendable, Equatable {
    private let known: [String: String]

    /// Takes what the core gave.
    public init(_ known: [String: String] = [:]) { self.known = known }

    /// The words for a key. On a phone the key's own variant goes first: `shell-x-phone` before `shell-x`. The key itself where
    /// nothing is known, so that a missing word is seen.
    public func callAsFunction(_ key: String) -> String { known[key + "-phone"] ?? known[key] ?? key }

    /// Whether there are words for a key.
    public func has(_ key: String) -> Bool { known[key + "-phone"] != nil || known[key] != nil }
}
