import Foundation

/// The shell's own words, as the core has them in the language of the screen.
public struct Words: Sendable, Equatable {
    private let known: [String: String]

    /// Takes what the core gave.
    public init(_ known: [String: String] = [:]) { self.known = known }

    /// The words for a key; the key itself where nothing is known, so that a missing word is seen.
    public func callAsFunction(_ key: String) -> String { known[key] ?? key }

    /// The words of the last start, for what is to be said before the core is open: none before the first one.
    public static func kept(in file: URL) -> Words? {
        (try? Data(contentsOf: file)).flatMap { try? JSONDecoder().decode([String: String].self, from: $0) }.map(Words.init)
    }

    /// Keeps them for the next start.
    func keep(in file: URL) {
        // What cannot be kept is said by the system's own words the next time.
        if let bytes = try? JSONEncoder().encode(known) { try? bytes.write(to: file, options: .atomic) }
    }
}
