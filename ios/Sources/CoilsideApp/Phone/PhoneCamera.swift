import AVFoundation
import CoilsideKit
import Foundation

/// The device's camera. It gives the bytes as the camera's software wrote them; the system's own picker would not.
final class PhoneCamera: NSObject, Camera, @unchecked Sendable {
    /// What the finder shows.
    let session = AVCaptureSession()
    private let output = AVCapturePhotoOutput()
    private let queue = DispatchQueue(label: "coilside.camera")
    private var taking: Taken?
    private var rotation: AVCaptureDevice.RotationCoordinator?

    func start() async throws {
        try await CameraLeave.ask()
        try await onQueue { [self] in
            if session.inputs.isEmpty { try configure() }
            session.startRunning()
        }
    }

    func shoot() async throws -> Data {
        try await withCheckedThrowingContinuation { continuation in
            queue.async { [self] in
                guard session.isRunning else { return continuation.resume(throwing: CameraProblem.none) }
                if let angle = rotation?.videoRotationAngleForHorizonLevelCapture, let way = output.connection(with: .video),
                    way.isVideoRotationAngleSupported(angle)
                {
                    way.videoRotationAngle = angle
                }
                // JPEG, which every office and every core decodes.
                let how = AVCapturePhotoSettings(format: [AVVideoCodecKey: AVVideoCodecType.jpeg])
                let taken = Taken(continuation)
                // The output itself holds it weakly.
                taking = taken
                output.capturePhoto(with: how, delegate: taken)
            }
        }
    }

    func stop() { queue.async { [self] in session.stopRunning() } }

    private func configure() throws {
        guard let device = AVCaptureDevice.default(.builtInWideAngleCamera, for: .video, position: .back),
            let input = try? AVCaptureDeviceInput(device: device), session.canAddInput(input), session.canAddOutput(output)
        else { throw CameraProblem.none }
        session.beginConfiguration()
        session.sessionPreset = .photo
        session.addInput(input)
        session.addOutput(output)
        session.commitConfiguration()
        rotation = AVCaptureDevice.RotationCoordinator(device: device, previewLayer: nil)
    }

    private func onQueue(_ work: @escaping @Sendable () throws -> Void) async throws {
        try await withCheckedThrowingContinuation { (continuation: CheckedContinuation<Void, any Error>) in
            queue.async { continuation.resume(with: Result(catching: work)) }
        }
    }
}

/// Hears of one picture.
private final class Taken: NSObject, AVCapturePhotoCaptureDelegate {
    private var continuation: CheckedContinuation<Data, any Error>?

    init(_ continuation: CheckedContinuation<Data, any Error>) { self.continuation = continuation }

    func photoOutput(_ output: AVCapturePhotoOutput, didFinishProcessingPhoto photo: AVCapturePhoto, error: (any Error)?) {
        let bytes = error == nil ? photo.fileDataRepresentation() : nil
        continuation?.resume(with: bytes.map { .success($0) } ?? .failure(CameraProblem.none))
        continuation = nil
    }

    func photoOutput(
        _ output: AVCapturePhotoOutput, didFinishCaptureFor resolvedSettings: AVCaptureResolvedPhotoSettings, error: (any Error)?
    ) {
        // Comes last, also where no picture came.
        continuation?.resume(throwing: CameraProblem.none)
        continuation = nil
    }
}

/// The person's leave to use the camera.
enum CameraLeave {
    static func ask() async throws {
        switch AVCaptureDevice.authorizationStatus(for: .video) {
        case .authorized: return
        case .notDetermined: if await AVCaptureDevice.requestAccess(for: .video) { return }
        case .denied, .restricted: break
        @unknown default: break
        }
        throw CameraProblem.denied
    }
}
