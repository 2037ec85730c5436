// Stand-in for Apple's AVFoundation, for Linux only: see StandIn/UIKit.
import Foundation
import UIKit

public struct AVMediaType: Hashable, RawRepresentable, Sendable {
    public let rawValue: String
    public init(rawValue: String) { self.rawValue = rawValue }
    public static let video = AVMediaType(rawValue: "vide")
}
public enum AVAuthorizationStatus: Int, Sendable { case notDetermined, restricted, denied, authorized }
public let AVVideoCodecKey: String = ""
public struct AVVideoCodecType: Hashable, RawRepresentable, Sendable {
    public let rawValue: String
    public init(rawValue: String) { self.rawValue = rawValue }
    public static let jpeg = AVVideoCodecType(rawValue: "jpeg")
}

open class AVCaptureDevice: NSObject, @unchecked Sendable {
    public struct DeviceType: Hashable, RawRepresentable, Sendable {
        public let rawValue: String
        public init(rawValue: String) { self.rawValue = rawValue }
        public static let builtInWideAngleCamera = DeviceType(rawValue: "")
    }
    public enum Position: Int, Sendable { case unspecified, back, front }
    public class RotationCoordinator: NSObject {
        public init(device: AVCaptureDevice, previewLayer: CALayer?) {}
        public var videoRotationAngleForHorizonLevelCapture: CGFloat { fatalError() }
    }
    open class func `default`(_ deviceType: DeviceType, for mediaType: AVMediaType?, position: Position) -> AVCaptureDevice? { nil }
    open class func authorizationStatus(for mediaType: AVMediaType) -> AVAuthorizationStatus { fatalError() }
    open class func requestAccess(for mediaType: AVMediaType) async -> Bool { fatalError() }
}
open class AVCaptureInput: NSObject {}
open class AVCaptureDeviceInput: AVCaptureInput { public init(device: AVCaptureDevice) throws {} }
open class AVCaptureConnection: NSObject {
    open var videoRotationAngle: CGFloat { get { fatalError() } set {} }
    open func isVideoRotationAngleSupported(_ videoRotationAngle: CGFloat) -> Bool { fatalError() }
}
open class AVCaptureOutput: NSObject { open func connection(with mediaType: AVMediaType) -> AVCaptureConnection? { nil } }

open class AVCaptureSession: NSObject, @unchecked Sendable {
    public struct Preset: Hashable, RawRepresentable, Sendable {
        public let rawValue: String
        public init(rawValue: String) { self.rawValue = rawValue }
        public static let photo = Preset(rawValue: "")
    }
    public override init() {}
    open var sessionPreset: Preset { get { fatalError() } set {} }
    open var inputs: [AVCaptureInput] { fatalError() }
    open var isRunning: Bool { fatalError() }
    open func canAddInput(_ input: AVCaptureInput) -> Bool { fatalError() }
    open func addInput(_ input: AVCaptureInput) {}
    open func canAddOutput(_ output: AVCaptureOutput) -> Bool { fatalError() }
    open func addOutput(_ output: AVCaptureOutput) {}
    open func beginConfiguration() {}
    open func commitConfiguration() {}
    open func startRunning() {}
    open func stopRunning() {}
}

open class AVCapturePhotoSettings: NSObject { public convenience init(format: [String: Any]?) { fatalError() } }
open class AVCaptureResolvedPhotoSettings: NSObject {}
open class AVCapturePhoto: NSObject { open func fileDataRepresentation() -> Data? { nil } }
// Apple's methods are optional ones of Objective-C; see StandIn/UIKit.
public protocol AVCapturePhotoCaptureDelegate: NSObjectProtocol {
    func photoOutput(_ output: AVCapturePhotoOutput, didFinishProcessingPhoto photo: AVCapturePhoto, error: (any Error)?)
    func photoOutput(
        _ output: AVCapturePhotoOutput, didFinishCaptureFor resolvedSettings: AVCaptureResolvedPhotoSettings, error: (any Error)?)
}
open class AVCapturePhotoOutput: AVCaptureOutput {
    public override init() {}
    open func capturePhoto(with settings: AVCapturePhotoSettings, delegate: any AVCapturePhotoCaptureDelegate) {}
}

open class AVMetadataObject: NSObject {
    public struct ObjectType: Hashable, RawRepresentable, Sendable {
        public let rawValue: String
        public init(rawValue: String) { self.rawValue = rawValue }
        public static let qr = ObjectType(rawValue: "")
    }
}
open class AVMetadataMachineReadableCodeObject: AVMetadataObject { open var stringValue: String? { nil } }
public protocol AVCaptureMetadataOutputObjectsDelegate: NSObjectProtocol {
    func metadataOutput(_ output: AVCaptureMetadataOutput, didOutput metadataObjects: [AVMetadataObject], from connection: AVCaptureConnection)
}
open class AVCaptureMetadataOutput: AVCaptureOutput {
    public override init() {}
    open var metadataObjectTypes: [AVMetadataObject.ObjectType]! { get { fatalError() } set {} }
    open func setMetadataObjectsDelegate(_ objectsDelegate: (any AVCaptureMetadataOutputObjectsDelegate)?, queue objectsCallbackQueue: DispatchQueue?) {}
}

public struct AVLayerVideoGravity: Hashable, RawRepresentable, Sendable {
    public let rawValue: String
    public init(rawValue: String) { self.rawValue = rawValue }
    public static let resizeAspectFill = AVLayerVideoGravity(rawValue: "")
}
open class AVCaptureVideoPreviewLayer: CALayer {
    open var session: AVCaptureSession? { get { fatalError() } set {} }
    open var videoGravity: AVLayerVideoGravity { get { fatalError() } set {} }
}
