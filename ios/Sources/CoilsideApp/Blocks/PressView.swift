import CoilsideCore
import CoilsideKit
import SwiftUI

/// Something to press, as the core says.
struct PressView: View {
    let button: Press
    var main = false
    var icon: String?
    var here = false
    /// What else happens when it is pressed.
    var also: @MainActor () -> Void = {}
    @Environment(Companion.self) private var companion

    var body: some View {
        if button.hold {
            HoldView(button: button, main: main) { press() }
        } else {
            Button(action: press) { face }
                .buttonStyle(PlateStyle(tone: button.tone, main: main))
                .accessibilityAddTraits(here ? .isSelected : [])
        }
    }

    private var face: some View {
        HStack(spacing: 10) {
            if let icon { Glyph(icon) } else if button.tone == .danger || button.tone == .attention { Glyph(button.tone.glyph) }
            Text(verbatim: button.label).multilineTextAlignment(.center)
            if companion.session.waits(button.press) { ProgressView() }
        }
    }

    private func press() {
        companion.press(button.press)
        also()
    }
}

/// How a button looks: a plate of its tone, never smaller than a glove.
struct PlateStyle: ButtonStyle {
    let tone: Tone
    let main: Bool

    func makeBody(configuration: Configuration) -> some View {
        let filled = main || tone == .primary
        let plate = tone == .danger ? Palette.danger : Palette.lead
        configuration.label
            .font(main ? .title3.weight(.semibold) : .body.weight(.medium))
            .foregroundStyle(filled ? (tone == .danger ? Palette.onDanger : Palette.onLead) : tone == .danger ? Palette.danger : Palette.lead)
            .padding(.horizontal, 18)
            .padding(.vertical, 10)
            .frame(maxWidth: .infinity, minHeight: main ? Measure.targetMain : Measure.target)
            .background(filled ? plate : Palette.paper, in: RoundedRectangle(cornerRadius: Measure.round))
            .overlay {
                RoundedRectangle(cornerRadius: Measure.round).stroke(tone == .quiet ? Palette.line : plate, style: StrokeStyle(lineWidth: 1.5))
            }
            .opacity(configuration.isPressed ? 0.7 : 1)
    }
}

/// A button that must be held. Whoever cannot hold, with a switch, a voice or a screen reader, presses it twice.
struct HoldView: View {
    let button: Press
    let main: Bool
    let fire: () -> Void
    @Environment(Companion.self) private var companion
    @Environment(\.accessibilityReduceMotion) private var still
    @State private var hold = Hold()
    @State private var armed = false
    /// It fired, or the finger went away: nothing more comes of it before it is lifted.
    @State private var slid = false

    var body: some View {
        let words = companion.session.words
        VStack(spacing: 4) {
            Text(verbatim: button.label).font(.title3.weight(.semibold)).multilineTextAlignment(.center)
            Text(verbatim: words(armed ? "shell-press-again" : "shell-hold")).font(.footnote)
        }
        .foregroundStyle(button.tone == .danger ? Palette.onDanger : Palette.onLead)
        .padding(.horizontal, 18)
        .padding(.vertical, 10)
        .frame(maxWidth: .infinity, minHeight: Measure.targetMain)
        .background(alignment: .leading) { fill }
        .background(button.tone == .danger ? Palette.danger : Palette.lead, in: RoundedRectangle(cornerRadius: Measure.round))
        .contentShape(RoundedRectangle(cornerRadius: Measure.round))
        .gesture(
            DragGesture(minimumDistance: 0)
                .onChanged { drag in
                    if abs(drag.translation.width) > 60 || abs(drag.translation.height) > 60 {
                        slid = true
                        hold.up()
                    } else if !slid {
                        hold.down(nowMs: nowMs)
                    }
                }
                .onEnded { _ in
                    slid = false
                    hold.up()
                }
        )
        .task(id: hold.isHeld) { await wait() }
        .accessibilityElement(children: .combine)
        .accessibilityAddTraits(.isButton)
        .accessibilityAction {
            if hold.activate(nowMs: nowMs) {
                armed = false
                fire()
            } else {
                armed = true
            }
        }
    }

    /// It fires while it is still held, as soon as that was long enough.
    private func wait() async {
        guard hold.isHeld else { return }
        do { try await Task.sleep(nanoseconds: UInt64(Hold.heldMs) * 1_000_000) } catch { return }
        if hold.fires(nowMs: nowMs) {
            slid = true
            fire()
        }
    }

    /// Fills as long as it is held; with reduced motion it only changes.
    private var fill: some View {
        RoundedRectangle(cornerRadius: Measure.round)
            .fill(Palette.comb)
            .opacity(hold.isHeld ? 0.55 : 0)
            .scaleEffect(x: hold.isHeld ? 1 : 0, anchor: .leading)
            .animation(still ? nil : .linear(duration: hold.isHeld ? Double(Hold.heldMs) / 1000 : 0.1), value: hold.isHeld)
    }

    private var nowMs: Int64 { Int64(ProcessInfo.processInfo.systemUptime * 1000) }
}
