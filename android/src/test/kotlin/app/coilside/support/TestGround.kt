package app.coilside.support

import android.content.Context
import app.coilside.Ground
import app.coilside.Signer
import coilside.Now
import java.io.File
import java.security.KeyFactory
import java.security.SecureRandom
import java.security.Signature
import java.security.interfaces.ECPublicKey
import java.security.spec.PKCS8EncodedKeySpec
import java.security.spec.X509EncodedKeySpec
import java.time.Duration
import java.util.Base64
import org.robolectric.shadows.ShadowSystemClock

/** A device whose clocks the test holds; its folder and its key outlive the process. */
class TestGround(private val disk: File) : Ground {
    /** Wall time, milliseconds since 1970: 2026-05-04, nine o'clock on the spot. */
    var utcMs = 1_777_881_600_000
    var offsetMin = 60

    /** Since the boot, milliseconds. */
    var monoMs = 3_600_000L
    private var boots = 1
    private val private = FACTORY.generatePrivate(PKCS8EncodedKeySpec(Base64.getDecoder().decode(PRIVATE)))
    private val public = FACTORY.generatePublic(X509EncodedKeySpec(Base64.getDecoder().decode(PUBLIC)))

    /** How often something was signed. */
    var signed = 0
        private set

    private val begun = System.nanoTime()

    /**
     * How many times as fast as this machine's the clocks run by themselves, from its time on, for tests with others on it. Pauses before
     * a thing is tried again are by these clocks, and a test need not sit them out. At 0 the clocks stand.
     */
    var speed = 0L
        set(value) {
            field = value
            utcMs = System.currentTimeMillis()
        }

    override fun now(): Now {
        val gone = (System.nanoTime() - begun) * speed / 1_000_000
        return Now(utcMs + gone, offsetMin, monoMs + gone, "boot-$boots")
    }

    override fun entropy() = ByteArray(32).also { SecureRandom().nextBytes(it) }

    override fun folder(app: Context) = disk

    override fun signer(app: Context) = object : Signer {
        override val publicKey = uncompressed(public as ECPublicKey)

        override fun sign(bytes: ByteArray): ByteArray = Signature.getInstance("SHA256withECDSA").run {
            signed += 1
            initSign(private)
            update(bytes)
            sign()
        }
    }

    /** Time goes by, also for what is posted to a looper with a delay. */
    fun pass(ms: Long) {
        utcMs += ms
        monoMs += ms
        ShadowSystemClock.advanceBy(Duration.ofMillis(ms))
    }

    /** The device is switched off, stays off for [ms], and comes up again. */
    fun reboot(ms: Long) {
        utcMs += ms
        monoMs = 20_000
        boots += 1
    }

    private fun uncompressed(key: ECPublicKey): ByteArray {
        val coordinate = { number: java.math.BigInteger -> number.toByteArray().let { if (it.size > 32) it.copyOfRange(it.size - 32, it.size) else ByteArray(32 - it.size) + it } }
        return byteArrayOf(4) + coordinate(key.w.affineX) + coordinate(key.w.affineY)
    }

    private companion object {
        /** One P-256 key for all tests, so that one may go on with what another began. Nothing of worth was ever signed with it. */
        const val PRIVATE = "MEECAQAwEwYHKoZIzj0CAQYIKoZIzj0DAQcEJzAlAgEBBCDXAMaoC9swZNfOb+/bi1VnSoKsi9SLvcDwEwAIgv9/wQ=="
        const val PUBLIC =
            "MFkwEwYHKoZIzj0CAQYIKoZIzj0DAQcDQgAEbRfT3IfKgoMRCBzuLp+r/L1r4s5DoFbXYDlbMC98F3T2IrC8DGMLanxWaVqRP9EvCREzKMfWTJdvlRO7MUKVHQ=="
        val FACTORY: KeyFactory = KeyFactory.getInstance("EC")
    }
}
