import CoilsideCore
import CoilsideKit
import Foundation

/// The core's door, which fails where a test says so.
final class FaultyDoor: CoreDoor, @unchecked Sendable {
    private let door: Door
    /// What every call that changes something fails with.
    var fails: DoorFault?
    /// What it was asked to do, in order.
    private(set) var acts: [Action] = []

    init(_ door: Door) { self.door = door }

    private func check() throws { if let fails { throw fails } }

    func opened(now: Now) throws -> Turn { try door.opened(now: now) }
    func act(actionId: String, action: Action, now: Now) throws -> Turn {
        acts.append(action)
        try check()
        return try door.act(actionId: actionId, action: action, now: now)
    }
    func done(effectId: String, outcome: Outcome, now: Now) throws -> Turn {
        try check()
        return try door.done(effectId: effectId, outcome: outcome, now: now)
    }
    func screen(now: Now) throws -> Turn { try door.screen(now: now) }
    func words() -> [String: String] { door.words() }
    func charged(percent: UInt8?) { door.charged(percent: percent) }
    func packs(folders: [PackFolder], now: Now) throws -> Turn { try door.packs(folders: folders, now: now) }
    func incomingPath(effectId: String) throws -> String { try door.incomingPath(effectId: effectId) }
    func previewPath(digest: String) -> String { door.previewPath(digest: digest) }
    func summaryPage(office: String?) throws -> String { try door.summaryPage(office: office) }
    func nextRequests(network: CoilsideCore.Network, now: Now) throws -> [Sending] { try door.nextRequests(network: network, now: now) }
    func nextSign() -> Signing? { door.nextSign() }
    func signed(id: String, signatureBase64: String) throws { try door.signed(id: id, signatureBase64: signatureBase64) }
    func answered(requestId: String, status: UInt16, headers: [Header], body: Data, now: Now) throws {
        try check()
        try door.answered(requestId: requestId, status: status, headers: headers, body: body, now: now)
    }
}
