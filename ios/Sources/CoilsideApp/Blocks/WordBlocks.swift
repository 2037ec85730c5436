import CoilsideCore
import CoilsideKit
import SwiftUI

/// Words: running text, or a heading.
struct WordsBlock: View {
    let text: String
    let level: UInt8
    let tone: Tone

    var body: some View {
        if level > 0 {
            Text(verbatim: text)
                .font(level == 1 ? .title2.weight(.bold) : level == 2 ? .title3.weight(.semibold) : .headline)
                .foregroundStyle(tone == .plain ? Palette.ink : tone.ink)
                .accessibilityAddTraits(.isHeader)
        } else if tone == .good || tone == .attention || tone == .danger {
            Marked(glyph: tone.glyph, text: text, ink: tone.ink)
        } else {
            Text(verbatim: text).foregroundStyle(tone.ink)
        }
    }
}

/// A hazard where it bites.
struct CautionBlock: View {
    let sign: String
    let title: String
    let text: String
    @Environment(Companion.self) private var companion

    var body: some View {
        VStack(alignment: .leading, spacing: 8) {
            HStack(spacing: 12) {
                Glyph(.sign(sign), size: 34)
                Text(verbatim: title).font(.headline)
            }
            .foregroundStyle(Palette.danger)
            Text(verbatim: text).foregroundStyle(Palette.ink)
        }
        .paper(Palette.dangerWash, edge: Palette.danger)
        .accessibilityElement(children: .ignore)
        .accessibilityLabel("\(companion.session.words("shell-caution")): \(title). \(text)")
    }
}

/// Another page.
struct LinkBlock: View {
    let label: String
    let to: String
    @Environment(\.openURL) private var openURL
    @Environment(Overlays.self) private var overlays

    var body: some View {
        switch Address.of(to) {
        case .summary:
            Button {
                overlays.summary = true
            } label: {
                face("picture")
            }.buttonStyle(PlateStyle(tone: .plain, main: false))
        case .outside(let url):
            Button {
                openURL(url)
            } label: {
                face("leave")
            }.buttonStyle(PlateStyle(tone: .plain, main: false))
        case .words(let address): Text(verbatim: "\(label): \(address)").foregroundStyle(Palette.ink)
        case .hidden: EmptyView()
        }
    }

    private func face(_ glyph: String) -> some View {
        HStack(spacing: 10) {
            Text(verbatim: label)
            Glyph(glyph)
        }
        .accessibilityAddTraits(.isLink)
    }
}
