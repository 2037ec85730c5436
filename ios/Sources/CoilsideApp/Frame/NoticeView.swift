import CoilsideCore
import CoilsideKit
import SwiftUI

/// Something that must be seen before the rest.
struct NoticeView: View {
    let notice: Notice

    var body: some View {
        VStack(alignment: .leading, spacing: 10) {
            HStack(alignment: .firstTextBaseline, spacing: 10) {
                Glyph(notice.tone.glyph)
                Text(verbatim: notice.title).font(.headline).accessibilityAddTraits(.isHeader)
            }
            .foregroundStyle(notice.tone.ink)
            ForEach(Array(notice.lines.enumerated()), id: \.offset) { each in
                HStack(alignment: .firstTextBaseline, spacing: 8) {
                    if notice.lines.count > 1 { Glyph("plain", size: 12) }
                    Text(verbatim: each.element)
                }
                .foregroundStyle(Palette.ink)
            }
            if !notice.buttons.isEmpty {
                Beside { ForEach(Array(notice.buttons.enumerated()), id: \.offset) { each in PressView(button: each.element) } }
            }
        }
        .paper(notice.tone.wash, edge: notice.tone == .plain || notice.tone == .quiet ? Palette.line : notice.tone.ink)
    }
}

/// What did not go, with the way to try it again.
struct TroubleView: View {
    let trouble: Trouble
    @Environment(Companion.self) private var companion

    var body: some View {
        let words = companion.session.words
        VStack(alignment: .leading, spacing: 10) {
            Marked(glyph: "danger", text: trouble.key.map { words($0) } ?? words("shell-failed"), ink: Palette.danger)
            if trouble.key == nil, !trouble.detail.isEmpty { Text(verbatim: trouble.detail).foregroundStyle(Palette.ink) }
            Beside {
                if companion.session.canTryAgain {
                    Button(words("shell-try-again")) { companion.session.tryAgain() }.buttonStyle(PlateStyle(tone: .primary, main: false))
                }
                Button(words("shell-close")) { companion.session.putAside() }.buttonStyle(PlateStyle(tone: .plain, main: false))
            }
        }
        .paper(Palette.dangerWash, edge: Palette.danger)
    }
}

/// Before there is a screen: a moment to wait, or why it cannot be opened. Without the core's words only its own sentence can be said.
struct StateView: View {
    var words: Words?
    let text: String?
    var again: (@MainActor () -> Void)?

    var body: some View {
        VStack(spacing: 20) {
            if let text {
                Glyph("attention", size: 56).foregroundStyle(Palette.attention)
                if let words { Text(verbatim: words("shell-failed")).font(.title2.weight(.bold)) }
                Text(verbatim: text).multilineTextAlignment(.center)
                if let again {
                    Button(action: again) {
                        if let words { Text(verbatim: words("shell-try-again")) } else { Image(systemName: "arrow.clockwise") }
                    }
                    .buttonStyle(PlateStyle(tone: .primary, main: true))
                }
            } else {
                ProgressView()
            }
        }
        .foregroundStyle(Palette.ink)
        .padding(32)
        .frame(maxWidth: Measure.lineMost, maxHeight: .infinity)
        .frame(maxWidth: .infinity)
        .background(Palette.ground)
    }
}
