import CoilsideCore
import Foundation

/// What the Kit needs of the core; the core's own door has all of it.
public protocol CoreDoor: AnyObject, Sendable {
    func opened(now: Now) throws -> Turn
    func act(actionId: String, action: Action, now: Now) throws -> Turn
    func done(effectId: String, outcome: Outcome, now: Now) throws -> Turn
    func screen(now: Now) throws -> Turn
    func words() -> [String: String]
    func charged(percent: UInt8?)
    func packs(folders: [PackFolder], now: Now) throws -> Turn
    func incomingPath(effectId: String) throws -> String
    func previewPath(digest: String) -> String
    func summaryPage(office: String?) throws -> String
    func nextRequests(network: CoilsideCore.Network, now: Now) throws -> [Sending]
    func nextSign() -> Signing?
    func signed(id: String, signatureBase64: String) throws
    func answered(requestId: String, status: UInt16, headers: [Header], body: Data, now: Now) throws
}

extension Door: CoreDoor {}

/// The core behind one serial queue: it may wait for the disk, and the main thread never does.
public final class DoorQueue: Sendable {
    private let door: any CoreDoor
    private let clock: any Clock
    private let queue = DispatchQueue(label: "coilside.door", qos: .userInitiated)

    /// Puts a door behind a queue of its own.
    public init(door: any CoreDoor, clock: any Clock) {
        self.door = door
        self.clock = clock
    }

    /// Calls the door when everything called before is through. The time is taken then, not when it was asked for.
    public func call<Answer: Sendable>(
        _ work: @escaping @Sendable (any CoreDoor, Now) throws -> Answer
    ) async throws -> Answer {
        try await withCheckedThrowingContinuation { continuation in
            queue.async { [door, clock] in
                continuation.resume(with: Result { try work(door, clock.now()) })
            }
        }
    }

    /// This moment, as the core would be told it.
    public func now() -> Now { clock.now() }
}
