import CoilsideKit
import Foundation
import Observation
import UIKit

/// The app from its start to the open core, and its way into the background and back.
@MainActor @Observable
final class Launch {
    /// Where it stands.
    enum State {
        /// The core is being opened.
        case opening
        /// It is open.
        case open(Companion, PhoneCamera)
        /// It cannot be opened, and why.
        case failed(Trouble)
    }

    private(set) var state = State.opening
    /// The words of the last start, where there was one.
    private(set) var words: Words?
    @ObservationIgnored private let network = NetworkWatch()
    @ObservationIgnored private var phone: PhoneGround?
    @ObservationIgnored private var opening: Task<Void, Never>?
    @ObservationIgnored private var asleep = UIBackgroundTaskIdentifier.invalid

    /// Opens what lies on this device. The system may start the app for its sending alone, without any window: then too.
    func open() async {
        if case .open = state { return }
        // Asked by the app and by its window at once: opened once.
        let opening = opening ?? Task { await openNow() }
        self.opening = opening
        await opening.value
        self.opening = nil
    }

    private func openNow() async {
        state = .opening
        do {
            let phone = try phone ?? PhoneGround()
            self.phone = phone
            words = Words.kept(in: Home(folder: phone.ground.folder).words)
            let companion = try await Companion.open(phone.ground, transport: phone.transport)
            state = .open(companion, phone.camera)
            companion.sweepHandover()
            network.start { link in Task { await companion.sender.carried(by: link) } }
            await companion.begin()
            await companion.session.charged(Charge.percent)
        } catch {
            state = .failed(.of(error))
        }
    }

    /// The app comes before the person's eyes.
    func appear() async {
        guard case .open(let companion, _) = state else { return await open() }
        await companion.sender.window(nil)
        await companion.session.charged(Charge.percent)
        wake()
    }

    /// The app goes out of sight: nothing half typed stays behind, and what is small goes out in the span that the system gives.
    func disappear() async {
        guard case .open(let companion, _) = state else { return }
        wake()
        let app = UIApplication.shared
        asleep = app.beginBackgroundTask { [weak self] in self?.wake() }
        await companion.leave()
        await companion.sender.window(Int64(min(app.backgroundTimeRemaining, 25) * 1000))
    }

    /// Slices went on in the app's sleep: what follows them is begun before the system sends the app to sleep again.
    func woken(_ done: @escaping @Sendable () -> Void) async {
        await open()
        guard case .open(let companion, _) = state, let phone else { return done() }
        phone.transport.woken {
            Task {
                await companion.sender.once()
                done()
            }
        }
    }

    private func wake() {
        guard asleep != .invalid else { return }
        UIApplication.shared.endBackgroundTask(asleep)
        asleep = .invalid
    }
}
