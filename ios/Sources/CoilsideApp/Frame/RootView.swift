import CoilsideCore
import CoilsideKit
import SwiftUI
import UIKit

/// The screen, and above it what cannot wait: first an alarm that rings, then a photograph that is wanted, then what the person opened.
struct RootView: View {
    let camera: PhoneCamera
    @Environment(Companion.self) private var companion
    @State private var overlays = Overlays()

    var body: some View {
        let covered = overlays.any || companion.photos.wanted != nil || companion.alarms.ringing != nil
        ZStack {
            ScreenView().accessibilityHidden(covered)
            if overlays.menu, let screen = companion.session.screen { MenuSheet(screen: screen) }
            if overlays.summary { SummarySheet() }
            if overlays.scan { ScanSheet() }
            if let wanted = companion.photos.wanted { PhotoSheet(wanted: wanted, camera: camera) }
            if let alarm = companion.alarms.ringing { AlarmSheet(alarm: alarm) }
        }
        .environment(overlays)
        .tint(Palette.lead)
        .task { await companion.watch() }
        .onChange(of: clockRuns, initial: true) { _, runs in UIApplication.shared.isIdleTimerDisabled = runs }
        .onChange(of: companion.session.screen?.place) { _, _ in overlays.menu = false }
    }

    /// While a clock runs the display stays on.
    private var clockRuns: Bool { companion.session.screen.map { Waiting.runs($0.blocks) } ?? false }
}
