import CoilsideCore
import Foundation
import Observation

/// A moment at which the person is to be called.
public struct Alarm: Sendable, Equatable, Identifiable {
    /// The request.
    public let id: String
    /// When, UTC milliseconds.
    public let atUtcMs: Int64
    /// What for.
    public let text: String

    /// When the system calls, UTC milliseconds: at the moment, and again for whoever did not hear it, a minute apart.
    public var calls: [(id: String, atUtcMs: Int64)] {
        (0..<Self.callsMost).map { ("\(id)#\($0)", atUtcMs + Int64($0) * Self.againMs) }
    }

    /// How often the system calls.
    static let callsMost = 3
    /// How long after a call that nobody heard the next one comes, milliseconds.
    static let againMs: Int64 = 60_000

    /// The request that a call of the system belongs to.
    public static func request(ofCall id: String) -> String { id.split(separator: "#").first.map(String.init) ?? id }
}

/// Calls the person at a time: by messages of the system while the app sleeps or is gone, and on its own screen until it is answered.
@MainActor @Observable
public final class Alarms {
    /// What the person is told below a waiting time.
    public enum Line: Sendable, Equatable {
        /// The system will call.
        case set
        /// The system may call once the person allows it.
        case mayAsk
        /// The person turned messages down: it rings only while the app is open.
        case denied
    }

    private var waiting: [String: Alarm] = [:]
    /// The alarm that rings now.
    public private(set) var ringing: Alarm?
    /// What to say of alarms; none where no alarm waits.
    public var line: Line? { waiting.isEmpty ? nil : permission }
    private var permission = Line.set
    /// What rang, so that one handed out again before its answer arrived stays silent.
    @ObservationIgnored private var rung: Set<String> = []
    @ObservationIgnored private var asking = false
    @ObservationIgnored weak var session: Session?
    @ObservationIgnored private let door: DoorQueue
    @ObservationIgnored private let bell: any Bell

    init(door: DoorQueue, bell: any Bell) {
        self.door = door
        self.bell = bell
    }

    func set(_ alarm: Alarm) {
        guard !rung.contains(alarm.id), waiting[alarm.id] != alarm else { return }
        waiting[alarm.id] = alarm
        Task {
            await learn()
            for call in alarm.calls { await bell.set(id: call.id, atUtcMs: call.atUtcMs, text: alarm.text) }
            // Taken back while it was being set.
            if waiting[alarm.id] == nil { await silence(alarm) }
        }
    }

    /// Asks the person for leave to call them.
    public func ask() async {
        _ = await bell.ask()
        await learn()
    }

    /// Looks whether one is due. One whose step ended or was taken back in the meantime stays silent.
    public func look() async {
        let now = door.now().utcMs
        guard ringing == nil, !asking, let due = waiting.values.filter({ $0.atUtcMs <= now }).min(by: { $0.atUtcMs < $1.atUtcMs })
        else { return }
        asking = true
        // Without an answer it rings: better once too often.
        let open = try? await door.call { try $0.opened(now: $1).effects.map(\.id) }
        asking = false
        guard waiting.removeValue(forKey: due.id) != nil else { return }
        guard open?.contains(due.id) ?? true else { return await silence(due) }
        ringing = due
        rung.insert(due.id)
        session?.done(due.id, .woken)
    }

    /// The person has heard it.
    public func stop() {
        guard let alarm = ringing else { return }
        ringing = nil
        Task { await silence(alarm) }
    }

    /// Only these requests are still open: what else waits is taken back.
    func keep(only open: [Effect]) {
        let known = Set(open.map(\.id))
        for alarm in waiting.values where !known.contains(alarm.id) {
            waiting[alarm.id] = nil
            Task { await silence(alarm) }
        }
    }

    /// Calls of an earlier start that belong to none of these are taken back: the person is here now.
    func sweep(except open: [Effect]) {
        let known = Set(open.map(\.id))
        Task { [bell] in
            let old = await bell.ids().filter { !known.contains(Alarm.request(ofCall: $0)) }
            if !old.isEmpty { await bell.remove(ids: old) }
        }
    }

    /// The core has heard of it.
    func settled(_ id: String) {
        if let alarm = waiting.removeValue(forKey: id) { Task { await silence(alarm) } }
    }

    private func silence(_ alarm: Alarm) async { await bell.remove(ids: alarm.calls.map(\.id)) }

    private func learn() async {
        switch await bell.permission() {
        case .given: permission = .set
        case .notAsked: permission = .mayAsk
        case .denied, .none: permission = .denied
        }
    }
}
