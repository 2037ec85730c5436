import CoilsideCore
import Foundation

/// A visit's record as the door gives it.
struct Record {
    let visit: String
    let events: [[String: Any]]

    init(_ door: Door) throws {
        guard let visit = door.currentVisit() else { throw Stuck(description: "no visit is open") }
        self.visit = visit
        events = try door.events(visit: visit).map {
            try JSONSerialization.jsonObject(with: Data($0.utf8)) as? [String: Any] ?? [:]
        }
    }

    func of(_ kind: String) -> [[String: Any]] { events.filter { $0["kind"] as? String == kind } }

    /// What a technician adds of their own accord, and what a device notes of its own: no part of what a scripted visit comes to.
    private static let beside: Set = ["finding-added", "customer-noted", "device-restarted", "facts-lapsed", "fact-rechecked"]

    /// The visit event kind by event kind, each with what it is about. The place comes whenever the device has one, so it is listed last.
    var kinds: [String] {
        let lines = events.compactMap { event -> String? in
            guard let kind = event["kind"] as? String, !Self.beside.contains(kind) else { return nil }
            let about = ["step", "reading", "slot", "excursion", "condition", "mix"].compactMap { event[$0] as? String }.first ?? ""
            return about.isEmpty ? kind : "\(kind) \(about)"
        }
        return lines.filter { !$0.hasPrefix("place-") } + lines.filter { $0.hasPrefix("place-") }
    }
}

/// Runs the project's program and waits for its end.
@discardableResult
func coilside(_ arguments: [String]) throws -> (code: Int32, text: String) {
    let process = Process()
    process.executableURL = Paths.program
    process.arguments = arguments
    let pipe = Pipe()
    process.standardOutput = pipe
    process.standardError = pipe
    try process.run()
    let text = String(decoding: pipe.fileHandleForReading.readDataToEndOfFile(), as: UTF8.self)
    process.waitUntilExit()
    return (process.terminationStatus, text)
}

extension Record {
    /// How many events the open visit has; 0 where none is open.
    static func count(_ door: Door) throws -> Int { try door.currentVisit().map { try door.events(visit: $0).count } ?? 0 }
}
