import CoilsideKit
import SwiftUI
import UIKit

/// What lies above the screen and takes all of it.
struct Sheet<Content: View>: View {
    @ViewBuilder let content: () -> Content

    var body: some View {
        ScrollView {
            VStack(alignment: .leading, spacing: Measure.gap, content: content)
                .padding(20)
                .frame(maxWidth: Measure.lineMost)
                .frame(maxWidth: .infinity)
        }
        .background(Palette.ground)
        .accessibilityAddTraits(.isModal)
    }
}

/// Leads to the system's settings of this app.
struct SettingsButton: View {
    @Environment(Companion.self) private var companion
    @Environment(\.openURL) private var openURL

    var body: some View {
        Button(companion.session.words("shell-to-settings")) {
            if let url = URL(string: UIApplication.openSettingsURLString) { openURL(url) }
        }
        .buttonStyle(PlateStyle(tone: .plain, main: false))
    }
}
