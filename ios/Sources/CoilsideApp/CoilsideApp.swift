import CoilsideKit
import SwiftUI
import UIKit

/// The app. Everything that it shows comes from the core; everything that it does is the Kit's.
@main
struct CoilsideApp: App {
    @UIApplicationDelegateAdaptor(AppDelegate.self) private var delegate
    @Environment(\.scenePhase) private var phase

    var body: some Scene {
        WindowGroup { Start(launch: delegate.launch) }
            .onChange(of: phase) { _, now in
                Task {
                    switch now {
                    case .active: await delegate.launch.appear()
                    case .background: await delegate.launch.disappear()
                    case .inactive: break
                    @unknown default: break
                    }
                }
            }
    }
}

/// The first view: what there is to show before and after the core is open.
private struct Start: View {
    let launch: Launch

    var body: some View {
        switch launch.state {
        case .opening: StateView(text: nil)
        case .failed(let trouble):
            // Before the core was ever open there are no words but its own sentence.
            let said = launch.words.flatMap { words in trouble.key.map { words($0) } } ?? trouble.detail
            StateView(words: launch.words, text: said) { Task { await launch.open() } }
        case .open(let companion, let camera): RootView(camera: camera).environment(companion)
        }
    }
}

/// Hears of what the system tells the app as a whole.
final class AppDelegate: NSObject, UIApplicationDelegate {
    let launch = Launch()

    func application(
        _ application: UIApplication, didFinishLaunchingWithOptions launchOptions: [UIApplication.LaunchOptionsKey: Any]? = nil
    ) -> Bool {
        // Without waiting for a window: the system also starts the app for its sending alone.
        Task { await launch.open() }
        return true
    }

    func application(
        _ application: UIApplication, handleEventsForBackgroundURLSession identifier: String, completionHandler: @escaping () -> Void
    ) {
        // The system calls and wants to be called on the main thread.
        nonisolated(unsafe) let done = completionHandler
        Task { await launch.woken { DispatchQueue.main.async { done() } } }
    }
}
