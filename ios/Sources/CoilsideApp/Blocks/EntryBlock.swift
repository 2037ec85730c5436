import CoilsideCore
import CoilsideKit
import SwiftUI

/// Words to type.
struct EntryBlock: View {
    let field: String
    let label: String
    let text: String
    let lines: UInt8
    let problem: String?
    let question: Question?
    @Environment(Companion.self) private var companion
    @FocusState private var typing: Bool

    var body: some View {
        VStack(alignment: .leading, spacing: 10) {
            Text(verbatim: label).font(.headline).foregroundStyle(Palette.ink).accessibilityHidden(true)
            TextField("", text: shown, axis: lines > 1 ? .vertical : .horizontal)
                .lineLimit(Int(max(1, lines))...Int(max(1, lines)) + 4)
                .focused($typing)
                .onSubmit { left() }
                .padding(14)
                .typed(wrong: problem != nil, typing: typing)
                .accessibilityLabel(label)
                .accessibilityHint(problem ?? "")
            FieldNotes(problem: problem, question: question, taken: nil)
        }
        .onChange(of: typing) { _, now in if !now { left() } }
    }

    private var shown: Binding<String> {
        Binding(now: { companion.fields.text(field, known: text) }, typed: { companion.fields.typed(field, $0) })
    }

    private func left() { companion.fields.left(field, companion.fields.text(field, known: text), halfTyped: false) }
}
