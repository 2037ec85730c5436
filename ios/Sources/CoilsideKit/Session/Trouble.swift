import CoilsideCore

/// What did not go, for the person.
public struct Trouble: Sendable, Equatable {
    /// The key of the words that say it best; none where only `detail` says it.
    public let key: String?
    /// The core's or the system's own words.
    public let detail: String

    /// What a failure comes to.
    public static func of(_ error: any Error) -> Trouble {
        switch error {
        case DoorFault.Full(let detail): Trouble(key: "shell-phone-full", detail: detail)
        case DoorFault.InUse(let detail), DoorFault.NoSuch(let detail), DoorFault.Failed(let detail):
            Trouble(key: nil, detail: detail)
        case let problem as SignerProblem: Trouble(key: "shell-key-locked", detail: problem.detail)
        case let problem as IncomingProblem: Trouble(key: problem.key, detail: problem.detail)
        default: Trouble(key: nil, detail: "\(error)")
        }
    }
}
