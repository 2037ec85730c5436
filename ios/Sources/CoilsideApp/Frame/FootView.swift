import CoilsideCore
import CoilsideKit
import SwiftUI

/// The buttons in the lower part, the first one large, within reach of one thumb.
struct FootView: View {
    let screen: Screen
    let menu: Bool
    @Environment(Companion.self) private var companion
    @Environment(Overlays.self) private var overlays

    var body: some View {
        VStack(spacing: 10) {
            if screen.foot.count > 1 {
                Beside { ForEach(Array(screen.foot.dropFirst().enumerated()), id: \.offset) { each in PressView(button: each.element) } }
            }
            HStack(spacing: 10) {
                if let main = screen.foot.first { PressView(button: main, main: true) }
                if menu, !screen.menu.isEmpty {
                    Button {
                        overlays.menu = true
                    } label: {
                        Glyph("menu", size: 28)
                    }
                    .buttonStyle(PlateStyle(tone: .plain, main: false))
                    .frame(width: screen.foot.isEmpty ? nil : 84)
                    .accessibilityLabel(companion.session.words("shell-menu"))
                }
            }
        }
        .padding(Measure.gap)
        .frame(maxWidth: Measure.lineMost)
        .frame(maxWidth: .infinity)
        .background(Palette.paper)
        .accessibilityElement(children: .contain)
        .accessibilityLabel(companion.session.words("shell-actions"))
    }
}

/// Ways to other screens; the one that leads to where one is says so.
struct MenuList: View {
    let screen: Screen
    @Environment(Overlays.self) private var overlays

    var body: some View {
        VStack(spacing: 10) {
            ForEach(Array(screen.menu.enumerated()), id: \.offset) { each in
                PressView(button: each.element, here: leadsHere(each.element), also: { overlays.menu = false })
            }
        }
    }

    private func leadsHere(_ button: Press) -> Bool { if case .go(screen.place) = button.press { true } else { false } }
}
