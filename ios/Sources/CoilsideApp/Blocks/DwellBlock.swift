import CoilsideCore
import CoilsideKit
import SwiftUI

/// A waiting time, with a clock that runs.
struct DwellBlock: View {
    /// Where it stands.
    enum Place {
        /// Among other blocks.
        case among
        /// On top of them.
        case ahead
        /// On top of nothing that asks for a hand: with digits for two metres.
        case alone
    }

    let dwell: Dwell
    let place: Place
    @Environment(Companion.self) private var companion
    @ScaledMetric(relativeTo: .largeTitle) private var digits: CGFloat = 64

    var body: some View {
        let words = companion.session.words
        VStack(alignment: .leading, spacing: 12) {
            HStack(spacing: 10) {
                Glyph(glyph, size: 26)
                Text(verbatim: dwell.title).font(.title3.weight(.semibold)).accessibilityAddTraits(.isHeader)
            }
            if dwell.runs { TimelineView(.periodic(from: .now, by: 0.5)) { _ in clock(words) } }
            if dwell.runs || dwell.state == .waiting { limits(words) }
            // While the clock runs its digits say it.
            if dwell.state != .running { Text(verbatim: dwell.stateText).font(.headline) }
            if dwell.runs, !dwell.then.isEmpty {
                VStack(alignment: .leading, spacing: 2) {
                    Text(verbatim: words("shell-then")).font(.subheadline)
                    Text(verbatim: dwell.then).font(.title3.weight(.semibold))
                }
            }
            if dwell.runs, let line = companion.alarms.line { AlarmLine(line: line) }
        }
        .foregroundStyle(Palette.onTop)
        .padding(20)
        .frame(maxWidth: .infinity, alignment: .leading)
        .background(back, in: RoundedRectangle(cornerRadius: Measure.round))
        .accessibilityElement(children: .contain)
        .accessibilityLabel(dwell.title)
    }

    private func clock(_ words: Words) -> some View {
        let now = companion.nowUtcMs
        let told = dwell.digits(nowUtcMs: now)
        return VStack(alignment: .leading, spacing: 8) {
            Text(verbatim: told.text)
                .font(.system(size: place == .alone ? digits * 1.8 : digits, weight: .bold).monospacedDigit())
                .lineLimit(1)
                .minimumScaleFactor(0.4)
            Text(verbatim: words(told.key)).font(.headline)
            ProgressView(value: dwell.share(nowUtcMs: now)).tint(Palette.comb).accessibilityHidden(true)
        }
        .accessibilityElement(children: .combine)
        .accessibilityAddTraits(.updatesFrequently)
    }

    @ViewBuilder private func limits(_ words: Words) -> some View {
        Beside {
            if !dwell.leastClock.isEmpty { limit(words("shell-least"), dwell.leastClock) }
            if !dwell.mostClock.isEmpty { limit(words("shell-most"), dwell.mostClock) }
        }
    }

    private func limit(_ label: String, _ clock: String) -> some View {
        VStack(alignment: .leading, spacing: 2) {
            Text(verbatim: label).font(.subheadline)
            Text(verbatim: clock).font(.title2.monospacedDigit().weight(.semibold))
        }
        .frame(maxWidth: .infinity, alignment: .leading)
        .accessibilityElement(children: .combine)
    }

    private var glyph: String {
        switch dwell.state {
        case .waiting: "open"
        case .running: "running"
        case .ready, .ended: "done"
        case .over: "danger"
        }
    }

    private var back: Color {
        switch dwell.state {
        case .waiting, .running, .ended: Palette.wait
        case .ready: Palette.waitReady
        case .over: Palette.waitOver
        }
    }
}

/// Whether the system will call, and the way to let it.
private struct AlarmLine: View {
    let line: Alarms.Line
    @Environment(Companion.self) private var companion

    var body: some View {
        let words = companion.session.words
        VStack(alignment: .leading, spacing: 10) {
            HStack(spacing: 8) {
                Glyph("bell", size: 20)
                Text(verbatim: words(line == .set ? "shell-alarm-phone" : "shell-alarm-phone-quiet")).font(.subheadline)
            }
            if line == .mayAsk {
                Button(words("shell-alarm-allow")) { Task { await companion.alarms.ask() } }
                    .buttonStyle(PlateStyle(tone: .plain, main: false))
            }
            if line == .denied { SettingsButton() }
        }
    }
}
