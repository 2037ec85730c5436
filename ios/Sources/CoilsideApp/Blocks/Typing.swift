import SwiftUI

extension Binding where Value: Sendable {
    /// A control that shows what stands somewhere now and reports what is typed. SwiftUI calls both on the main thread, and its initializer
    /// wants that said.
    @MainActor init(now: @escaping @MainActor () -> Value, typed: @escaping @MainActor (Value) -> Void) {
        self.init(get: { MainActor.assumeIsolated { now() } }, set: { new in MainActor.assumeIsolated { typed(new) } })
    }
}
