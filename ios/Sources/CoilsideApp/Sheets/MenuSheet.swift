import CoilsideCore
import CoilsideKit
import SwiftUI

/// Ways to other screens.
struct MenuSheet: View {
    let screen: Screen
    @Environment(Companion.self) private var companion
    @Environment(Overlays.self) private var overlays

    var body: some View {
        Sheet {
            Text(verbatim: companion.session.words("shell-menu")).font(.title2.weight(.bold)).foregroundStyle(Palette.ink)
                .accessibilityAddTraits(.isHeader)
            MenuList(screen: screen)
            Button(companion.session.words("shell-close")) { overlays.menu = false }.buttonStyle(PlateStyle(tone: .quiet, main: false))
        }
    }
}

/// An alarm that rings, until it is answered.
struct AlarmSheet: View {
    let alarm: Alarm
    @Environment(Companion.self) private var companion

    var body: some View {
        VStack(spacing: 28) {
            Glyph("bell", size: 96)
            Text(verbatim: alarm.text).font(.largeTitle.weight(.bold)).multilineTextAlignment(.center).accessibilityAddTraits(.isHeader)
            Button(companion.session.words("shell-alarm-stop")) { companion.alarms.stop() }
                .buttonStyle(PlateStyle(tone: .primary, main: true))
        }
        .foregroundStyle(Palette.ink)
        .padding(28)
        .frame(maxWidth: Measure.lineMost, maxHeight: .infinity)
        .frame(maxWidth: .infinity)
        .background(Palette.attentionWash)
        .accessibilityAddTraits(.isModal)
        .sensoryFeedback(.warning, trigger: alarm.id)
    }
}
