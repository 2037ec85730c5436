import CoilsideCore
import CoilsideKit
import SwiftUI

/// A number with its unit.
struct NumberBlock: View {
    let field: String
    let label: String
    let unit: String
    let text: String
    let hint: String
    let before: String?
    let problem: String?
    let question: Question?
    let taken: String?
    let couldNot: Press?
    @Environment(Companion.self) private var companion
    @FocusState private var typing: Bool

    var body: some View {
        VStack(alignment: .leading, spacing: 10) {
            Text(verbatim: label).font(.headline).foregroundStyle(Palette.ink).accessibilityHidden(true)
            HStack(spacing: 10) {
                HStack(spacing: 8) {
                    TextField("", text: shown)
                        .font(.title2.monospacedDigit().weight(.semibold))
                        .keyboardType(.decimalPad)
                        .focused($typing)
                        .autocorrectionDisabled()
                        .accessibilityLabel(label)
                        .accessibilityHint([unit, problem ?? "", before ?? "", hint].filter { !$0.isEmpty }.joined(separator: ". "))
                    if !unit.isEmpty { Text(verbatim: unit).font(.title3).foregroundStyle(Palette.soft).accessibilityHidden(true) }
                }
                .padding(.horizontal, 14)
                .typed(wrong: problem != nil, typing: typing)
                // The keypad for numbers has no minus.
                Button {
                    turnSign()
                } label: {
                    Text(verbatim: "±").font(.title2)
                }
                .buttonStyle(PlateStyle(tone: .quiet, main: false))
                .frame(width: 64)
                .accessibilityLabel(companion.session.words("shell-sign"))
            }
            FieldNotes(problem: problem, question: question, taken: taken)
            if let before { Text(verbatim: before).font(.subheadline).foregroundStyle(Palette.soft) }
            if !hint.isEmpty { Text(verbatim: hint).font(.subheadline).foregroundStyle(Palette.soft) }
            if let couldNot { PressView(button: couldNot) }
        }
        .onChange(of: typing) { _, now in if !now { left() } }
        .toolbar {
            ToolbarItemGroup(placement: .keyboard) {
                if typing {
                    Spacer()
                    Button(companion.session.words("shell-key-done")) { typing = false }
                }
            }
        }
    }

    private var shown: Binding<String> {
        Binding(now: { companion.fields.text(field, known: text) }, typed: { companion.fields.typed(field, $0) })
    }

    private func left() {
        let halfTyped = taken == nil && problem == nil && question == nil
        companion.fields.left(field, companion.fields.text(field, known: text), halfTyped: halfTyped)
    }

    private func turnSign() {
        let now = companion.fields.text(field, known: text)
        let bare = now.trimmingPrefix { $0 == "-" || $0 == "−" || $0 == " " }
        companion.fields.typed(field, bare.count == now.count ? "-" + now : String(bare))
    }
}

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

/// What is wrong with a field, what is asked back, and what stands in the record.
struct FieldNotes: View {
    let problem: String?
    let question: Question?
    let taken: String?

    var body: some View {
        if let problem { Marked(glyph: "danger", text: problem, ink: Palette.danger) }
        if let question {
            VStack(alignment: .leading, spacing: 10) {
                Marked(glyph: "attention", text: question.text, ink: Palette.attention)
                PressView(button: question.confirm)
            }
            .paper(Palette.attentionWash, edge: Palette.attention)
        }
        if let taken { Marked(glyph: "kept", text: taken, ink: Palette.good) }
    }
}

extension Binding where Value: Sendable {
    /// A control that shows what stands somewhere now and reports what is typed. SwiftUI calls both on the main thread, and its initializer
    /// wants that said.
    @MainActor init(now: @escaping @MainActor () -> Value, typed: @escaping @MainActor (Value) -> Void) {
        self.init(get: { MainActor.assumeIsolated { now() } }, set: { new in MainActor.assumeIsolated { typed(new) } })
    }
}
