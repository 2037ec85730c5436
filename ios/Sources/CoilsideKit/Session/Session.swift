import CoilsideCore
import Foundation
import Observation

/// The conversation with the core: one call at a time, in order. What is on its way is known, so that a button pressed twice
/// counts once, and what failed can be tried again under the same id.
@MainActor @Observable
public final class Session {
    /// Something that is to be told to the core.
    enum Job: Equatable, Sendable {
        case act(id: String, action: Action)
        case done(id: String, outcome: Outcome)
    }

    /// What to show; none before the first answer.
    public private(set) var screen: Screen?
    /// The shell's own words.
    public private(set) var words = Words()
    /// What went wrong with one call.
    public private(set) var trouble: Trouble?
    /// Grows with every answer, so that a view knows that something is new.
    public private(set) var turns = 0
    /// Whether the trouble can be tried again.
    public var canTryAgain: Bool { failed != nil }
    /// Whether nothing is on its way.
    public var isCalm: Bool { !running && jobs.isEmpty }

    @ObservationIgnored private var failed: Job?
    private var jobs: [Job] = []
    private var running = false
    @ObservationIgnored private let door: DoorQueue
    @ObservationIgnored private let on: Listeners

    /// Who hears what the conversation brings.
    struct Listeners {
        /// A request to do.
        var effect: @MainActor (Effect) -> Void = { _ in }
        /// The core has taken an action.
        var acknowledged: @MainActor (Action) -> Void = { _ in }
        /// The core has heard how a request ended, or could not take it and says why.
        var settled: @MainActor (String) -> Void = { _ in }
        /// The app has just been started: these requests are open, whatever it knew of before.
        var opened: @MainActor ([Effect]) -> Void = { _ in }
        /// Something was done that may have closed requests: these are still open.
        var open: @MainActor ([Effect]) -> Void = { _ in }
        /// The shell's words are others now.
        var words: @MainActor (Words) -> Void = { _ in }
        /// Something may wait to be sent.
        var sends: @MainActor () -> Void = {}
    }

    init(door: DoorQueue, on: Listeners) {
        self.door = door
        self.on = on
    }

    /// Reads the screen and every request that is open.
    public func open() async {
        do {
            let turn = try await door.call { try $0.opened(now: $1) }
            accept(turn)
            on.opened(turn.effects)
        } catch {
            fault(error, of: nil)
        }
    }

    /// Reads the screen again, for clocks and for what came from the office. A screen that was read before something was done is not shown.
    public func refresh() async {
        guard isCalm, screen != nil else { return }
        let before = turns
        do {
            let turn = try await door.call { try $0.screen(now: $1) }
            if isCalm, turns == before { accept(turn) }
        } catch {
            fault(error, of: nil)
        }
    }

    /// Does what a button carries, or keeps what is typed.
    public func act(_ action: Action) {
        if let field = action.typedField {
            // What waits and is overtaken by newer text of the same field need not be told; the call under way stays.
            let underWay = running ? jobs.prefix(1) : []
            jobs = underWay + jobs.dropFirst(underWay.count).filter { !$0.isDraft(of: field) }
        } else if waits(action) {
            return
        }
        push(.act(id: UUID().uuidString, action: action))
    }

    /// Tells how a request ended.
    public func done(_ effectId: String, _ outcome: Outcome) {
        push(.done(id: effectId, outcome: outcome))
    }

    /// Whether the same press is still on its way.
    public func waits(_ action: Action) -> Bool {
        jobs.contains { if case .act(_, action) = $0 { true } else { false } }
    }

    /// Does again what failed, under the same id.
    public func tryAgain() {
        guard let job = failed else { return }
        putAside()
        push(job)
    }

    /// The person has read the trouble.
    public func putAside() {
        trouble = nil
        failed = nil
    }

    /// Something that is no action went wrong, such as a photograph that could not be kept.
    func tell(_ trouble: Trouble) { self.trouble = trouble }

    /// Tells the charge, per cent; none while it charges or where nobody knows.
    public func charged(_ percent: UInt8?) async {
        _ = try? await door.call { door, _ in door.charged(percent: percent) }
        await refresh()
    }

    /// Hands in the packs of a folder.
    func packs(_ folders: [PackFolder]) async {
        do {
            accept(try await door.call { try $0.packs(folders: folders, now: $1) })
        } catch {
            fault(error, of: nil)
        }
    }

    private func push(_ job: Job) {
        jobs.append(job)
        guard !running else { return }
        running = true
        Task { await run() }
    }

    private func run() async {
        while let job = jobs.first {
            do {
                let (turn, open) = try await tell(job)
                jobs.removeFirst()
                switch job {
                case .act(_, let action): on.acknowledged(action)
                case .done(let id, _): on.settled(id)
                }
                accept(turn)
                if let open { on.open(open) }
                on.sends()
            } catch {
                jobs.removeFirst()
                if case .done(let id, _) = job { on.settled(id) }
                fault(error, of: job)
            }
        }
        running = false
    }

    /// The answer, and what is still asked of the shell where that may have become less.
    private func tell(_ job: Job) async throws -> (Turn, [Effect]?) {
        try await door.call { door, now in
            switch job {
            case .act(let id, let action):
                let turn = try door.act(actionId: id, action: action, now: now)
                return (turn, action.typedField == nil ? try door.opened(now: now).effects : nil)
            case .done(let id, let outcome):
                return (try door.done(effectId: id, outcome: outcome, now: now), nil)
            }
        }
    }

    private func accept(_ turn: Turn) {
        let language = screen?.language
        screen = turn.screen
        turns += 1
        for effect in turn.effects { on.effect(effect) }
        if language != turn.screen.language {
            Task {
                guard let known = try? await door.call({ door, _ in door.words() }) else { return }
                words = Words(known)
                on.words(words)
            }
        }
    }

    private func fault(_ error: any Error, of job: Job?) {
        trouble = .of(error)
        failed = job
    }
}

extension Action {
    /// The field whose text this action carries.
    var typedField: String? {
        switch self {
        case .draft(let field, _), .enter(let field, _): field
        default: nil
        }
    }

    /// The text that it carries.
    var typedText: String? {
        switch self {
        case .draft(_, let text), .enter(_, let text): text
        default: nil
        }
    }
}

extension Session.Job {
    func isDraft(of field: String) -> Bool {
        if case .act(_, .draft(field, _)) = self { true } else { false }
    }
}
