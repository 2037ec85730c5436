import CoilsideCore
import Foundation
import Observation

/// What is half typed. It lives here until the core has it, so that a redraw or a refusal takes nothing away.
@MainActor @Observable
public final class Fields {
    /// How long typing must rest before the text is told, milliseconds.
    static let restMs: UInt64 = 300

    /// Text that the core has not acknowledged.
    private var local: [String: String] = [:]
    /// Fields typed in since they were last entered.
    private var touched: Set<String> = []
    /// Fields whose draft the core has, while somebody still types in them.
    private var kept: Set<String> = []
    /// What was entered last: Return and leaving the field at once is meant once.
    private var entered: [String: String] = [:]
    @ObservationIgnored private var rests: [String: Task<Void, Never>] = [:]
    @ObservationIgnored var send: @MainActor (Action) -> Void = { _ in }
    /// Something stands in front of whoever types, such as an alarm: leaving a field then is no sign that it is whole.
    @ObservationIgnored var interrupted: @MainActor () -> Bool = { false }

    /// The text to show in a field, where the core knows `known`.
    public func text(_ field: String, known: String) -> String { local[field] ?? known }

    /// Somebody types.
    public func typed(_ field: String, _ text: String) {
        local[field] = text
        touched.insert(field)
        kept.remove(field)
        rests[field]?.cancel()
        rests[field] = Task { [weak self] in
            do { try await Task.sleep(nanoseconds: Self.restMs * 1_000_000) } catch { return }
            self?.flush(field)
        }
    }

    /// What is drawn is kept at once: a stroke is whole when the finger is lifted.
    public func drawn(_ field: String, _ text: String) {
        local[field] = text
        send(.draft(field: field, text: text))
    }

    /// Tells every text that still rests: before anything is pressed, and before the app goes.
    public func flushAll() {
        for field in rests.keys.sorted() { flush(field) }
    }

    private func flush(_ field: String) {
        guard let rest = rests.removeValue(forKey: field) else { return }
        rest.cancel()
        if let text = local[field] { send(.draft(field: field, text: text)) }
    }

    /// A field was left: what was typed is meant. One that was only passed through is not told again, but for a number that lies
    /// half typed since before a restart (`halfTyped`).
    public func left(_ field: String, _ text: String, halfTyped: Bool) {
        guard touched.contains(field) || (halfTyped && !text.isEmpty && entered[field] != text) else { return }
        if interrupted() { return }
        entered[field] = text
        rests.removeValue(forKey: field)?.cancel()
        touched.remove(field)
        local[field] = text
        send(.enter(field: field, text: text))
    }

    /// The core has it. A field that was not left yet keeps what stands in it.
    func acknowledged(_ action: Action) {
        guard let field = action.typedField, let text = action.typedText, local[field] == text else { return }
        if touched.contains(field) { kept.insert(field) } else { local[field] = nil }
    }

    /// Another screen is shown: what the core has is its own to show again.
    public func turned() {
        for field in kept { local[field] = nil }
        kept = []
        touched = Set(local.keys)
        entered = [:]
    }
}
