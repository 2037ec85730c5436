import CoilsideCore
import CoilsideKit
import SwiftUI

/// Where one is: the unit's letter, the title, how far the visit is, and what still has to reach the office.
struct HeadView: View {
    let screen: Screen
    @Environment(Companion.self) private var companion

    var body: some View {
        VStack(alignment: .leading, spacing: 10) {
            HStack(alignment: .center, spacing: 14) {
                if let unit = screen.unit { UnitLetter(letter: unit) }
                VStack(alignment: .leading, spacing: 2) {
                    Text(verbatim: screen.title).font(.title2.weight(.bold)).accessibilityAddTraits(.isHeader)
                    if !screen.subtitle.isEmpty { Text(verbatim: screen.subtitle).font(.subheadline).foregroundStyle(Palette.softOnTop) }
                }
            }
            Beside {
                if let progress = screen.progress {
                    VStack(alignment: .leading, spacing: 4) {
                        Comb(done: Int(progress.done), total: Int(progress.total)).frame(height: 12).accessibilityHidden(true)
                        Text(verbatim: progress.text).font(.footnote).foregroundStyle(Palette.softOnTop)
                    }
                    .frame(minWidth: 160)
                }
                HStack(spacing: 6) {
                    Glyph(screen.outbox.tone.glyph, size: 16)
                    Text(verbatim: "\(screen.outbox.label): \(screen.outbox.value)").font(.footnote.weight(.medium))
                }
                .accessibilityElement(children: .combine)
            }
        }
        .foregroundStyle(Palette.onTop)
        .padding(Measure.gap)
        .frame(maxWidth: .infinity, alignment: .leading)
        .background(Palette.top)
    }
}

/// The letter of what a screen or a photograph belongs to.
struct UnitLetter: View {
    let letter: String
    @Environment(Companion.self) private var companion

    var body: some View {
        Text(verbatim: letter)
            .font(.title.weight(.heavy))
            .foregroundStyle(Palette.top)
            .padding(.horizontal, 14)
            .padding(.vertical, 6)
            .background(Palette.comb, in: RoundedRectangle(cornerRadius: 10))
            .accessibilityLabel("\(companion.session.words("shell-unit")) \(letter)")
    }
}

/// How far a visit is: one tooth a step.
private struct Comb: View {
    let done: Int
    let total: Int

    var body: some View {
        ZStack {
            Teeth(from: done, to: total, of: total).fill(Palette.combRest)
            Teeth(from: 0, to: done, of: total).fill(Palette.comb)
        }
    }
}

private struct Teeth: Shape {
    let from: Int
    let to: Int
    let of: Int

    func path(in rect: CGRect) -> Path {
        var path = Path()
        guard of > 0, from < to else { return path }
        let pitch = rect.width / CGFloat(of)
        for tooth in from..<to {
            path.addRect(CGRect(x: rect.minX + CGFloat(tooth) * pitch, y: rect.minY, width: max(1, pitch * 0.62), height: rect.height))
        }
        return path
    }
}

/// The facts that matter for safety, live.
struct StripView: View {
    let strip: [Live]
    @Environment(Companion.self) private var companion

    var body: some View {
        ScrollView(.horizontal) {
            HStack(alignment: .top, spacing: 10) {
                ForEach(Array(strip.enumerated()), id: \.offset) { each in
                    VStack(alignment: .leading, spacing: 2) {
                        Text(verbatim: each.element.label).font(.caption).foregroundStyle(Palette.soft)
                        HStack(spacing: 6) {
                            Glyph(each.element.tone.glyph, size: 16)
                            Text(verbatim: each.element.value).font(.subheadline.weight(.semibold))
                        }
                        .foregroundStyle(each.element.tone.ink)
                    }
                    .padding(.horizontal, 12)
                    .padding(.vertical, 8)
                    .background(each.element.tone.wash, in: RoundedRectangle(cornerRadius: 10))
                    .accessibilityElement(children: .combine)
                }
            }
            .padding(.horizontal, Measure.gap)
            .padding(.vertical, 8)
        }
        .background(Palette.sunk)
        .accessibilityElement(children: .contain)
        .accessibilityLabel(companion.session.words("shell-live"))
    }
}
